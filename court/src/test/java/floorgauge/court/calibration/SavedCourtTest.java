package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.CourtPoints;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.Mat;

class SavedCourtTest {

    private static final PlanarScene SCENE = PlanarScene.halfCourt();

    @TempDir
    Path folder;

    /** What marks of a person say of the scene, moved to the right. */
    private static CourtCalibration marked(double rightPixels) {
        List<CourtMark> marks = new ArrayList<>();
        CourtPoints.of(SCENE.rules).forEach(point -> {
            double[] film = SCENE.film(point.floor().xMetres(), point.floor().yMetres(), 0);
            film[0] += rightPixels;
            if (SCENE.inPicture(film)) {
                marks.add(new MarkedPoint(point.name(), point.floor(), new PixelPoint(film[0], film[1])));
            }
        });
        return CourtCalibrator.fromPoints(SCENE.rules, marks, SCENE.width, SCENE.height);
    }

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("hall é.yaml"), text);
    }

    @Test
    void noSuchFile() {
        assertThatThrownBy(() -> SavedCourt.read(folder.resolve("none.yaml")))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("none.yaml does not exist");
    }

    @Test
    void wrongFilesNameWhatIsWrong() throws IOException {
        String text = SavedCourt.text(marked(0));
        assertWrong(text.replace("version: 1", "version: 7"), "reads version 1");
        assertWrong(text.replace("rules: fiba", "rules: polo"), "unknown rule book: polo");
        assertWrong(text.replace("status: good", "status: none"), "good or weak");
        assertWrong(text.replaceAll("floorToPixel: \\[[^,]*,", "floorToPixel: ["), "expected 9 numbers, but found 8");
        assertWrong(
                text.replaceAll("floorToPixel: \\[.*]", "floorToPixel: [0,0,0,0,0,0,0,0,0]"), "no court that a camera");
        assertWrong(text.replaceAll("covariance: \\[[^,]*,", "covariance: [NaN,"), "finite number");
        assertWrong(text.replaceAll("(?m)^lens.*$", ""), "\"lens\" is missing");
    }

    private void assertWrong(String text, String part) throws IOException {
        Path file = file(text);
        assertThatThrownBy(() -> SavedCourt.read(file))
                .as(part)
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("hall é.yaml")
                .hasMessageContaining(part);
    }

    @Test
    void whatIsReadIsWhatWasSavedToTheLastBit() throws IOException {
        CourtCalibration saved = marked(0);
        CourtCalibration read = SavedCourt.read(file(SavedCourt.text(saved))).calibration();
        assertThat(read.projection().orElseThrow().floorToIdeal().rowMajor())
                .isEqualTo(saved.projection().orElseThrow().floorToIdeal().rowMajor());
        assertThat(read.projection().orElseThrow().lens())
                .isEqualTo(saved.projection().orElseThrow().lens());
        assertThat(read.covariance()).isEqualTo(saved.covariance());
        assertThat(read.coverage()).isEqualTo(saved.coverage());
        assertThat(read.status()).isEqualTo(saved.status());
        assertThat(SavedCourt.text(read)).isEqualTo(SavedCourt.text(saved));
    }

    @Test
    void theSavedCourtHoldsWhereItsLinesStillLieAndNowhereElse() throws IOException {
        OpenCv.load();
        SavedCourt same = SavedCourt.read(file(SavedCourt.text(marked(0))));
        SavedCourt moved = SavedCourt.read(file(SavedCourt.text(marked(9))));
        List<Mat> frames = new CourtPicture(SCENE, new double[] {245, 245, 245}, 0.05, 11)
                .withCourt()
                .frames(3, 4);
        try {
            SavedCourt.Check check = same.check(frames);
            assertThat(check.words()).contains("hall é.yaml still fits");
            CourtCalibration kept = check.calibration().orElseThrow();
            assertThat(kept.projection()).isEqualTo(same.calibration().projection());
            FloorPoint at = new FloorPoint(9, 2);
            double[] film = SCENE.film(9, 2, 0);
            assertThat(kept.floorAt(new PixelPoint(film[0], film[1]), 0, 0)
                            .mean()
                            .distanceTo(at))
                    .isLessThan(0.02);
            assertThat(same.check(frames)).isEqualTo(check);

            SavedCourt.Check off = moved.check(frames);
            assertThat(off.calibration()).isEqualTo(Optional.empty());
            assertThat(off.words()).contains("does not fit").endsWith("it is looked for anew.");
        } finally {
            frames.forEach(Mat::release);
        }
    }

    @Test
    void anotherSizeOfFilmDoesNotFit() throws IOException {
        OpenCv.load();
        SavedCourt saved = SavedCourt.read(file(SavedCourt.text(marked(0))));
        Mat other = Mat.zeros(SCENE.height / 2, SCENE.width / 2, org.opencv.core.CvType.CV_8UC3);
        try {
            assertThat(saved.check(List.of(other)).words()).contains("saved from a film of 1280 x 720");
        } finally {
            other.release();
        }
    }
}
