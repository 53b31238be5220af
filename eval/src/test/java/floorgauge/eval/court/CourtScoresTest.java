package floorgauge.eval.court;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class CourtScoresTest {

    private static final Offset<Double> EXACT = Offset.offset(1e-9);

    /** Straight from above, 50 pixels a metre, the picture's middle over (cx, cy). */
    private static CourtCalibration above(double cx, double cy) {
        double scale = 1.0 / 50;
        double[] pixelToFloor = {scale, 0, cx - 499.5 * scale, 0, scale, cy - 249.5 * scale, 0, 0, 1};
        return CourtCalibration.known(RuleSet.fiba(), pixelToFloor, 1000, 500);
    }

    @Test
    void noCourtFound() {
        CourtCalibration none = CourtCalibration.none(RuleSet.fiba(), 1000, 500, "no line was found");
        CourtScores scores = CourtScores.of(above(0, 0), none, 0.5);
        assertThat(scores.coverage()).isZero();
        assertThat(scores.visibleIou()).isZero();
        assertThat(scores.everywhere().count()).isZero();
        assertThat(scores.map()).isNotEmpty().allMatch(c -> Double.isNaN(c.errorMetres()) && !c.supported());
    }

    @Test
    void noFloorInSight() {
        CourtScores scores = CourtScores.of(above(200, 0), above(200, 0), 0.5);
        assertThat(scores.map()).isEmpty();
        assertThat(scores.coverage()).isNaN();
        assertThat(scores.visibleIou()).isNaN();
    }

    @Test
    void theKnownCameraItself() {
        CourtScores scores = CourtScores.of(above(0, 0), above(0, 0), 0.5);
        // 20 x 10 m in sight of a court of 28 x 15 m, whose middle row of points lies at y = 0.
        assertThat(scores.map()).hasSize(41 * 21);
        assertThat(scores.coverage()).isEqualTo(1);
        assertThat(scores.visibleIou()).isEqualTo(1);
        assertThat(scores.everywhere().ninetiethMetres()).isCloseTo(0, EXACT);
        assertThat(scores.supported().count()).isEqualTo(41 * 21);
    }

    @Test
    void aShiftedCameraIsOffByTheShiftEverywhere() {
        CourtScores scores = CourtScores.of(above(0, 0), above(1, 0), 0.5);
        assertThat(scores.everywhere().medianMetres()).isCloseTo(1, EXACT);
        assertThat(scores.everywhere().biasXMetres()).isCloseTo(1, EXACT);
        assertThat(scores.everywhere().biasYMetres()).isCloseTo(0, EXACT);
        // The result sees x from -9 to 11 where the truth sees -10 to 10: 39 common columns of 43.
        assertThat(scores.visibleIou()).isCloseTo(39.0 / 43, EXACT);
        assertThat(scores.everywhere().withinStatedShare()).isZero();
    }

    @Test
    void refusesAGridOfNothingAndATruthOfNothing() {
        assertThatThrownBy(() -> CourtScores.of(above(0, 0), above(0, 0), 0)).hasMessageContaining("step");
        CourtCalibration none = CourtCalibration.none(RuleSet.fiba(), 10, 10, "none");
        assertThatThrownBy(() -> CourtScores.of(none, above(0, 0), 1)).hasMessageContaining("truth");
    }

    @Test
    void errorsOfNothing() {
        FloorErrors none = FloorErrors.of(List.of());
        assertThat(none.count()).isZero();
        assertThat(none.medianMetres()).isNaN();
        assertThat(none.withinStatedShare()).isNaN();
    }

    @Test
    void aPositionWithoutErrorThatIsRightLiesWithinWhatItStates() {
        FloorPoint point = new FloorPoint(1, 2);
        FloorEstimate exact = new FloorEstimate(point, new FloorCovariance(0, 0, 0));
        assertThat(FloorErrors.of(List.of(new FloorErrors.Sample(point, exact))).withinStatedShare())
                .isEqualTo(1);
    }

    /** Errors drawn from a known skewed covariance lie in its 90 % ellipse nine times in ten. */
    @Test
    void honestErrorsLieWithinTheirEllipse() {
        long seed = 42;
        Random random = new Random(seed);
        List<FloorErrors.Sample> samples = new ArrayList<>();
        for (int i = 0; i < 20000; i++) {
            double a = random.nextGaussian();
            double b = random.nextGaussian();
            FloorPoint measured = new FloorPoint(0.3 * a, 0.1 * a + 0.2 * b);
            FloorCovariance covariance = new FloorCovariance(0.09, 0.03, 0.01 + 0.04);
            samples.add(new FloorErrors.Sample(new FloorPoint(0, 0), new FloorEstimate(measured, covariance)));
        }
        FloorErrors errors = FloorErrors.of(samples);
        // Three standard errors of a share of 0.9 among 20000.
        assertThat(errors.withinStatedShare()).as("seed %d", seed).isCloseTo(0.9, Offset.offset(0.0064));
        assertThat(errors.biasXMetres()).as("seed %d", seed).isCloseTo(0, Offset.offset(0.0064));
    }
}
