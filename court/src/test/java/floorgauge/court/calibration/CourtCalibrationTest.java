package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CourtCalibrationTest {

    private static final PlanarScene SCENE = PlanarScene.halfCourt();

    private static CourtCalibration known() {
        return CourtCalibration.known(
                SCENE.rules, Homography.of(SCENE.floorToIdeal()).inverse().rowMajor(), SCENE.width, SCENE.height);
    }

    @Test
    void noCourtMeasuresNothing() {
        CourtCalibration none = CourtCalibration.none(RuleSet.fiba(), 640, 360, "No painted line was found.");
        assertThat(none.supports(new FloorPoint(0, 0))).isFalse();
        assertThatThrownBy(() -> none.floorAt(new PixelPoint(1, 1), 1, 1))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("No painted line was found.");
    }

    @Test
    void statusAndProjectionGoTogether() {
        assertThatThrownBy(() -> new CourtCalibration(
                        RuleSet.fiba(),
                        CalibrationStatus.NONE,
                        "",
                        10,
                        10,
                        java.util.Optional.of(SCENE.projection()),
                        ProjectionCovariance.zero(),
                        Coverage.none()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void skyIsNotFloor() {
        CourtCalibration known = known();
        PixelPoint sky = new PixelPoint(640, 0);
        assertThat(known.seesFloor(sky)).isFalse();
        assertThat(known.estimate(sky, 1, 1)).isEmpty();
        assertThatThrownBy(() -> known.floorAt(sky, 1, 1)).hasMessageContaining("horizon");
    }

    @Test
    void floorAndPictureAgreeWithThePinholeEquation() {
        CourtCalibration known = known();
        for (double x = -2; x <= 14; x += 2) {
            for (double y = -6; y <= 7.5; y += 1.5) {
                double[] film = SCENE.film(x, y, 0);
                PixelPoint pixel = known.pixelAt(new FloorPoint(x, y));
                assertThat(pixel.x()).isCloseTo(film[0], within(1e-6));
                assertThat(pixel.y()).isCloseTo(film[1], within(1e-6));
                FloorPoint back = known.floorAt(pixel, 1, 1).mean();
                assertThat(back.xMetres()).isCloseTo(x, within(1e-8));
                assertThat(back.yMetres()).isCloseTo(y, within(1e-8));
            }
        }
    }

    @Test
    void heightsAgreeWithThePinholeEquation() {
        CourtCalibration known = known();
        PinholeCamera camera = known.camera().orElseThrow();
        assertThat(camera.focalPixels()).isCloseTo(900, within(1e-6));
        assertThat(camera.position().x()).isCloseTo(6, within(1e-8));
        assertThat(camera.position().y()).isCloseTo(-13, within(1e-8));
        assertThat(camera.position().z()).isCloseTo(4, within(1e-8));
        double[] rim = SCENE.film(12.425, 0, 3.05);
        PixelPoint pixel = known.pixelAt(12.425, 0, 3.05).orElseThrow();
        assertThat(pixel.x()).isCloseTo(rim[0], within(1e-6));
        assertThat(pixel.y()).isCloseTo(rim[1], within(1e-6));
        double[] foot = SCENE.film(9, 1, 0);
        double[] head = SCENE.film(9, 1, 1.9);
        assertThat(known.heightInPixels(new FloorPoint(9, 1), 1.9).orElseThrow())
                .isCloseTo(Math.hypot(head[0] - foot[0], head[1] - foot[1]), within(1e-6));
    }

    @Test
    void aViewFromStraightAboveTellsNoCamera() {
        CourtCalibration above = CourtCalibration.known(
                RuleSet.fiba(), new double[] {0.02, 0, -12.8, 0, -0.02, 7.2, 0, 0, 1}, 1280, 720);
        assertThat(above.camera()).isEmpty();
        assertThat(above.heightInPixels(new FloorPoint(0, 0), 1.9)).isEmpty();
        assertThat(above.pixelAt(0, 0, 0)).isPresent();
    }

    /** First-order covariance of a known camera against 20,000 draws of the pixel. */
    @Test
    void pixelNoiseBecomesFloorCovariance() {
        CourtCalibration known = known();
        PixelPoint pixel = known.pixelAt(new FloorPoint(9, 2));
        FloorCovariance predicted = known.floorAt(pixel, 0.5, 1.5).covariance();
        long seed = 20250612;
        Random random = new Random(seed);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        int draws = 20_000;
        for (int i = 0; i < draws; i++) {
            FloorPoint drawn = known.floorAt(
                            new PixelPoint(
                                    pixel.x() + 0.5 * random.nextGaussian(), pixel.y() + 1.5 * random.nextGaussian()),
                            0,
                            0)
                    .mean();
            xx += Math.pow(drawn.xMetres() - 9, 2) / draws;
            yy += Math.pow(drawn.yMetres() - 2, 2) / draws;
            xy += (drawn.xMetres() - 9) * (drawn.yMetres() - 2) / draws;
        }
        // The standard error of a variance over n draws is its square root of 2/n: 1 %; five of those are allowed.
        assertThat(predicted.xx()).as("seed %d", seed).isCloseTo(xx, within(0.05 * xx));
        assertThat(predicted.yy()).as("seed %d", seed).isCloseTo(yy, within(0.05 * yy));
        assertThat(predicted.xy()).as("seed %d", seed).isCloseTo(xy, within(0.05 * Math.sqrt(xx * yy)));
    }

    @Test
    void supportEndsWithTheEvidence() {
        CourtCalibration known = known();
        assertThat(known.supports(new FloorPoint(9, 2))).isTrue();
        assertThat(known.supports(new FloorPoint(40, 2))).isFalse();
    }

    @Test
    void errorsGrowAwayFromTheCamera() {
        FloorEstimate near = known().floorAt(known().pixelAt(new FloorPoint(6, -5)), 1, 1);
        FloorEstimate far = known().floorAt(known().pixelAt(new FloorPoint(6, 7)), 1, 1);
        assertThat(far.covariance().standardErrorMetres())
                .isGreaterThan(near.covariance().standardErrorMetres());
    }
}
