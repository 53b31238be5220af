package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

class LinesCalibratorTest {

    private static final double[] WHITE = {245, 245, 245};

    @BeforeAll
    static void natives() {
        OpenCv.load();
    }

    private static CourtCalibration calibrate(List<Mat> frames) {
        try {
            return CourtCalibrator.fromLines(Optional.of(RuleSet.fiba()), frames);
        } finally {
            frames.forEach(Mat::release);
        }
    }

    /** Median error, over the floor in sight, of where the calibration puts floor points seen by the true camera. */
    static double medianError(CourtCalibration calibration, PlanarScene scene) {
        double[] straight = errors(calibration, scene, 1);
        double[] turned = errors(calibration, scene, -1);
        return Math.min(straight[straight.length / 2], turned[turned.length / 2]);
    }

    /** Sorted errors; a court turned by 180 degrees is the same court. */
    private static double[] errors(CourtCalibration calibration, PlanarScene scene, int turn) {
        java.util.stream.DoubleStream.Builder errors = java.util.stream.DoubleStream.builder();
        for (double x = -scene.rules.lengthMetres() / 2; x <= scene.rules.lengthMetres() / 2; x++) {
            for (double y = -scene.rules.widthMetres() / 2; y <= scene.rules.widthMetres() / 2; y++) {
                double[] film = scene.film(x, y, 0);
                if (scene.inPicture(film)) {
                    FloorPoint truth = new FloorPoint(turn * x, turn * y);
                    errors.add(calibration
                            .estimate(new PixelPoint(film[0], film[1]), 0, 0)
                            .map(e -> e.mean().distanceTo(truth))
                            .orElse(Double.POSITIVE_INFINITY));
                }
            }
        }
        return errors.build().sorted().toArray();
    }

    @Test
    void noFrame() {
        assertThatThrownBy(() -> calibrate(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aBlankPictureHasNoCourt() {
        CourtCalibration none = calibrate(List.of(new Mat(360, 640, CvType.CV_8UC3, new Scalar(90, 120, 150))));
        assertThat(none.status()).isEqualTo(CalibrationStatus.NONE);
        assertThat(none.reason()).isEqualTo("No two directions of straight lines were found on a floor.");
    }

    @Test
    void noiseHasNoCourt() {
        Mat noise = new Mat(360, 640, CvType.CV_8UC3);
        Core.setRNGSeed(11);
        Core.randu(noise, 0, 255);
        CourtCalibration none = calibrate(List.of(noise));
        assertThat(none.status()).isEqualTo(CalibrationStatus.NONE);
        assertThat(none.reason()).isNotBlank();
    }

    @Test
    void aFloorWithoutACourtIsRefused() {
        PlanarScene scene = PlanarScene.halfCourt();
        CourtCalibration none = calibrate(new CourtPicture(scene, WHITE, 0, 5).frames(7, 8));
        assertThat(none.status()).isEqualTo(CalibrationStatus.NONE);
        assertThat(none.reason()).isNotBlank();
    }

    @Test
    void aCleanCourtIsFoundWithoutAClick() {
        PlanarScene scene = PlanarScene.halfCourt();
        CourtCalibration found =
                calibrate(new CourtPicture(scene, WHITE, 0.05, 6).withCourt().frames(7, 8));
        assertThat(found.status()).as(found.reason()).isEqualTo(CalibrationStatus.GOOD);
        assertThat(medianError(found, scene)).isLessThan(0.05);
        // The camera stands on the near side, as the shared scene's does.
        assertThat(found.camera().orElseThrow().position().y()).isNegative();
        assertThat(found.supports(new FloorPoint(9, 0))).isTrue();
    }
}
