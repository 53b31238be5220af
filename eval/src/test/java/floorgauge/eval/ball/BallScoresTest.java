package floorgauge.eval.ball;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.BallObservation;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class BallScoresTest {

    private static final Offset<Double> EXACT = Offset.offset(1e-9);
    private static final BallTolerance TOLERANCE = new BallTolerance(10, 0.05);

    @Test
    void nothingAtAll() {
        BallScores scores = BallScores.of(List.of(), List.of(), TOLERANCE);
        assertThat(scores.precision()).isNaN();
        assertThat(scores.recall()).isNaN();
        assertThat(scores.f1()).isNaN();
    }

    @Test
    void emptyTruthAndEmptyResult() {
        BallScores onlyFalse = BallScores.of(List.of(), List.of(seen(0, 0, 0)), TOLERANCE);
        assertThat(onlyFalse.falseAlarms()).isEqualTo(1);
        assertThat(onlyFalse.precision()).isZero();
        BallScores onlyMissed = BallScores.of(List.of(truth(0, 0, 0)), List.of(), TOLERANCE);
        assertThat(onlyMissed.missed()).isEqualTo(1);
        assertThat(onlyMissed.recall()).isZero();
        assertThat(onlyMissed.f1()).isZero();
    }

    @Test
    void aHiddenBallIsNotToBeFoundAndAnInferredOneIsNotScored() {
        BallTruth hidden = new BallTruth(0, Optional.empty(), Optional.empty());
        BallObservation inferred = new BallObservation(
                0, 0, floor(0, 0), OptionalDouble.empty(), Optional.empty(), OptionalInt.empty(), 0.5);
        BallScores scores = BallScores.of(List.of(hidden), List.of(inferred), TOLERANCE);
        assertThat(scores.missed()).isZero();
        assertThat(scores.falseAlarms()).isZero();
    }

    @Test
    void theEdgesOfTheTolerance() {
        assertThat(BallScores.of(List.of(truth(0, 0, 0)), List.of(seen(0.05, 10, 0)), TOLERANCE)
                        .found())
                .isEqualTo(1);
        assertThat(BallScores.of(List.of(truth(0.05, 0, 0)), List.of(seen(0, 10, 0)), TOLERANCE)
                        .found())
                .isEqualTo(1);
        assertThat(BallScores.of(List.of(truth(0, 0, 0)), List.of(seen(0.06, 0, 0)), TOLERANCE)
                        .found())
                .isZero();
        assertThat(BallScores.of(List.of(truth(0.06, 0, 0)), List.of(seen(0, 0, 0)), TOLERANCE)
                        .found())
                .isZero();
        assertThat(BallScores.of(List.of(truth(0, 0, 0)), List.of(seen(0, 10.01, 0)), TOLERANCE)
                        .found())
                .isZero();
        BallTolerance sameInstant = new BallTolerance(10, 0);
        assertThat(BallScores.of(List.of(truth(0, 0, 0)), List.of(seen(0, 3, 4)), sameInstant)
                        .pixels()
                        .bias())
                .isCloseTo(5, EXACT);
    }

    @Test
    void eachInstantIsFoundOnce() {
        BallScores scores = BallScores.of(
                List.of(truth(0.04, 0, 0), truth(0, 0, 0)),
                List.of(seen(0, 1, 0), seen(0, 2, 0), seen(0.04, 0, 0)),
                TOLERANCE);
        assertThat(scores.found()).isEqualTo(2);
        assertThat(scores.falseAlarms()).isEqualTo(1);
        assertThat(scores.precision()).isCloseTo(2.0 / 3, EXACT);
        assertThat(scores.recall()).isEqualTo(1);
        assertThat(scores.f1()).isCloseTo(0.8, EXACT);
    }

    /** Nearness weighs picture and time alike, each as a share of its tolerance of 10 pixels and 0.05 s. */
    @Test
    void ofTwoThatWillDoTheNearerStandsForTheBall() {
        assertThat(pixelsOfTheOneTaken(seen(1, 6, 0), seen(1, 2, 0))).isCloseTo(2, EXACT);
        assertThat(pixelsOfTheOneTaken(seen(1.04, 2, 0), seen(1.01, 3, 0))).isCloseTo(3, EXACT);
        assertThat(pixelsOfTheOneTaken(seen(0.96, 2, 0), seen(1.01, 3, 0))).isCloseTo(3, EXACT);
        assertThat(pixelsOfTheOneTaken(seen(1.01, 8, 0), seen(1.03, 1, 0))).isCloseTo(1, EXACT);
        assertThat(pixelsOfTheOneTaken(seen(1, 9, 0), seen(1.04, 2, 0))).isCloseTo(9, EXACT);
    }

    private static double pixelsOfTheOneTaken(BallObservation first, BallObservation second) {
        BallScores scores = BallScores.of(List.of(truth(1, 0, 0)), List.of(first, second), TOLERANCE);
        assertThat(scores.falseAlarms()).isEqualTo(1);
        return scores.pixels().bias();
    }

    @Test
    void recallCountsWhatWasMissed() {
        BallScores scores = BallScores.of(
                List.of(truth(0, 0, 0), truth(1, 0, 0), truth(2, 0, 0)), List.of(seen(1, 0, 0)), TOLERANCE);
        assertThat(scores.recall()).isCloseTo(1.0 / 3, EXACT);
    }

    @Test
    void distanceInSpaceWhereBothKnowIt() {
        BallTruth high = new BallTruth(
                0, Optional.of(new PixelPoint(0, 0)), Optional.of(new BallTruth.Place(new FloorPoint(0, 0), 3)));
        BallObservation found = new BallObservation(
                0, 0, floor(3, 0), OptionalDouble.of(7), Optional.of(new PixelPoint(0, 0)), OptionalInt.empty(), 1);
        BallScores scores = BallScores.of(List.of(high), List.of(found), TOLERANCE);
        assertThat(scores.space().count()).isEqualTo(1);
        assertThat(scores.space().bias()).isCloseTo(5, EXACT);
        BallScores flat = BallScores.of(List.of(high), List.of(seen(0, 0, 0)), TOLERANCE);
        assertThat(flat.space().count()).isZero();
    }

    @Test
    void refusesATolerancesThatCannotBe() {
        assertThatThrownBy(() -> new BallTolerance(0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new BallTolerance(1, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new BallTruth(Double.NaN, Optional.empty(), Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static BallTruth truth(double time, double x, double y) {
        return new BallTruth(time, Optional.of(new PixelPoint(x, y)), Optional.empty());
    }

    private static BallObservation seen(double time, double x, double y) {
        return new BallObservation(
                Math.round(time * 25),
                time,
                floor(0, 0),
                OptionalDouble.empty(),
                Optional.of(new PixelPoint(x, y)),
                OptionalInt.empty(),
                0.9);
    }

    private static FloorEstimate floor(double x, double y) {
        return new FloorEstimate(new FloorPoint(x, y), FloorCovariance.isotropic(0.1));
    }
}
