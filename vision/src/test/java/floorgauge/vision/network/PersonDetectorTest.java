package floorgauge.vision.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.track.ImageBox;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;

class PersonDetectorTest {

    private static final double LOW_SCORE = 0.03;

    private static PersonDetector detector;
    private static Mat figures;

    @TempDir
    Path folder;

    @BeforeAll
    static void load() {
        detector = new PersonDetector(GoldenTensors.models(), new DetectorSettings(LOW_SCORE, 0.6));
        figures = GoldenTensors.picture("person-detector");
    }

    @AfterAll
    static void free() {
        detector.close();
    }

    @Test
    void aMissingNetworkIsSaidSo() {
        assertThatThrownBy(() -> new PersonDetector(new ModelFolder(folder), DetectorSettings.standard()))
                .isInstanceOf(NetworkException.class)
                .hasMessageContaining("person-detector.pt")
                .message()
                .hasLineCount(1);
    }

    @Test
    void aDamagedNetworkIsSaidSo() throws IOException {
        Files.writeString(folder.resolve("person-detector.pt"), "not a network");
        assertThatThrownBy(() -> new PersonDetector(new ModelFolder(folder), DetectorSettings.standard()))
                .isInstanceOf(NetworkException.class)
                .hasMessageContaining("copy it again");
    }

    @Test
    void anEmptyPictureHoldsNobody() {
        Mat grey = new Mat(96, 160, CvType.CV_8UC3, Scalar.all(120));
        try (PersonDetector standard = new PersonDetector(GoldenTensors.models(), DetectorSettings.standard())) {
            assertThat(standard.detect(grey)).isEmpty();
        }
    }

    @Test
    void noPicturesGiveNoLists() {
        assertThat(detector.detect(List.of(), new Rect(0, 0, 1, 1), 1)).isEmpty();
    }

    @Test
    void aPictureOfAnotherKindIsABug() {
        Mat grey = new Mat(96, 160, CvType.CV_8UC1);
        assertThatThrownBy(() -> detector.detect(grey)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> detector.detect(figures, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void everySizeIsTaken() {
        for (int[] size : new int[][] {{1, 1}, {31, 33}, {97, 300}}) {
            Mat picture = new Mat(size[0], size[1], CvType.CV_8UC3, Scalar.all(120));
            assertThat(detector.detect(picture)).allMatch(d -> d.score() < 0.3);
        }
    }

    /** Reference: TensorFlow.js 4 on the source network. */
    @Test
    void theStrongestPeaksAreThoseOfTheSourceNetwork() throws IOException {
        double[][] expected = GoldenTensors.rows("person-detector");
        try (PersonDetector raw = new PersonDetector(GoldenTensors.models(), new DetectorSettings(0, 1))) {
            List<Detection> found = raw.detect(figures);
            for (int i = 0; i < expected.length; i++) {
                ImageBox box = found.get(i).box();
                assertThat(found.get(i).score()).isCloseTo(expected[i][0], within(1e-5));
                // The network counts from the first pixel's edge.
                assertThat(box.left() + 0.5).isCloseTo(expected[i][1], within(0.05));
                assertThat(box.top() + 0.5).isCloseTo(expected[i][2], within(0.05));
                assertThat(box.right() + 0.5).isCloseTo(expected[i][3], within(0.05));
                assertThat(box.bottom() + 0.5).isCloseTo(expected[i][4], within(0.05));
            }
        }
    }

    @Test
    void aPartOfThePictureGivesBoxesInTheWholeOnesPixels() {
        ImageBox whole = strongestNear(detector.detect(figures), 445, 365);
        ImageBox part = strongestNear(detector.detect(figures, new Rect(320, 192, 192, 320), 1), 445, 365);
        assertThat(part.intersectionOverUnion(whole)).isGreaterThan(0.75);
    }

    @Test
    void aScaledPictureGivesBoxesInItsOwnPixels() {
        ImageBox whole = strongestNear(detector.detect(figures), 445, 365);
        ImageBox larger = strongestNear(detector.detect(figures, 0.875), 445, 365);
        assertThat(larger.intersectionOverUnion(whole)).isGreaterThan(0.75);
    }

    @Test
    void picturesTogetherGiveWhatEachGivesAlone() {
        Mat mirrored = new Mat();
        Core.flip(figures, mirrored, 1);
        List<List<Detection>> together = detector.detect(List.of(figures, mirrored), Letterbox.whole(figures), 1);
        assertThat(together).hasSize(2);
        assertSame(together.get(0), detector.detect(figures));
        assertSame(together.get(1), detector.detect(mirrored));
    }

    @Test
    void theSamePictureGivesTheSameNumbers() {
        List<Detection> first = detector.detect(figures);
        for (int i = 0; i < 4; i++) {
            assertThat(detector.detect(figures)).isEqualTo(first);
        }
        assertThat(first).isNotEmpty();
    }

    private static void assertSame(List<Detection> a, List<Detection> b) {
        assertThat(a).hasSameSizeAs(b).isNotEmpty();
        for (int i = 0; i < a.size(); i++) {
            assertThat(a.get(i).box().intersectionOverUnion(b.get(i).box())).isGreaterThan(0.999);
            assertThat(a.get(i).score()).isCloseTo(b.get(i).score(), within(1e-5));
        }
    }

    private static ImageBox strongestNear(List<Detection> detections, double x, double y) {
        return detections.stream()
                .map(Detection::box)
                .filter(b -> b.left() < x && b.right() > x && b.top() < y && b.bottom() > y)
                .findFirst()
                .orElseThrow();
    }
}
