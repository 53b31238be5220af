package floorgauge.vision.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

class BallDetectorTest {

    private static BallDetector detector;

    @TempDir
    Path folder;

    @BeforeAll
    static void load() {
        detector = new BallDetector(GoldenTensors.models(), 0.05);
    }

    @AfterAll
    static void free() {
        detector.close();
    }

    /** The golden picture holds the three frames one above the other. */
    private static List<Mat> frames() {
        Mat strip = GoldenTensors.picture("ball-detector");
        int height = strip.rows() / BallDetector.FRAMES;
        return IntStream.range(0, BallDetector.FRAMES)
                .mapToObj(k -> strip.submat(k * height, (k + 1) * height, 0, strip.cols()))
                .toList();
    }

    @Test
    void aMissingNetworkIsSaidSo() {
        assertThatThrownBy(() -> new BallDetector(new ModelFolder(folder), 0.1))
                .isInstanceOf(NetworkException.class)
                .hasMessageContaining("ball-detector.pt");
    }

    @Test
    void anEmptyHallHoldsNoBall() {
        Mat grey = new Mat(192, 256, CvType.CV_8UC3, Scalar.all(128));
        assertThat(detector.detect(List.of(grey, grey, grey)))
                .allSatisfy(s -> assertThat(s.score()).isLessThan(0.5));
    }

    @Test
    void theBallInFlightIsWhereItWasWhenTheNetworkWasExported() throws IOException {
        double[] best = GoldenTensors.rows("ball-detector")[0];
        List<BallSighting> seen = detector.detect(frames());
        assertThat(seen).isNotEmpty();
        assertThat(seen.get(0).score()).isCloseTo(best[0], within(1e-3));
        assertThat(seen.get(0).centre().x()).isCloseTo(best[1], within(0.05));
        assertThat(seen.get(0).centre().y()).isCloseTo(best[2], within(0.05));
        assertThat(seen.get(0).radiusPixels()).isCloseTo(best[3], within(0.05));
    }

    @Test
    void theDrawnBallIsFoundWhereItWasDrawn() {
        BallSighting best = detector.detect(frames()).get(0);
        assertThat(best.centre().x()).isCloseTo(100, within(1.5));
        assertThat(best.centre().y()).isCloseTo(50, within(1.5));
        assertThat(best.radiusPixels()).isCloseTo(8, within(2.0));
    }

    @Test
    void twoFramesAreTooFew() {
        Mat grey = new Mat(64, 64, CvType.CV_8UC3, Scalar.all(128));
        assertThatThrownBy(() -> detector.detect(List.of(grey, grey)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("3 frames");
    }
}
