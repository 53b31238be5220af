package floorgauge.eval.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.eval.statistics.PrecisionRecallCurve.Candidate;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class StatisticsDegenerateTest {

    @Test
    void aShareOfNothingIsNotDefined() {
        assertThat(Ratios.of(0, 0)).isNaN();
        assertThat(Ratios.f1(0, 0, 0)).isNaN();
        assertThat(Ratios.f1(0, 1, 1)).isZero();
        assertThat(Ratios.f1(3, 1, 2)).isCloseTo(6.0 / 9, Offset.offset(1e-12));
    }

    @Test
    void kappaWithoutGradesOrWithOneGradeIsNotDefined() {
        assertThat(WeightedKappa.quadratic(new int[0], new int[0], 3)).isNaN();
        assertThat(WeightedKappa.quadratic(new int[] {1, 1}, new int[] {1, 1}, 3))
                .isNaN();
        assertThat(WeightedKappa.quadratic(new int[] {0, 2}, new int[] {0, 2}, 3))
                .isEqualTo(1);
        assertThat(WeightedKappa.quadratic(new int[] {0, 2}, new int[] {2, 0}, 3))
                .isEqualTo(-1);
        assertThatThrownBy(() -> WeightedKappa.quadratic(new int[] {3}, new int[] {0}, 3))
                .hasMessage("a grade lies in 0 to 2: 3");
        assertThatThrownBy(() -> WeightedKappa.quadratic(new int[] {0}, new int[] {-1}, 3))
                .hasMessage("a grade lies in 0 to 2: -1");
        assertThatThrownBy(() -> WeightedKappa.quadratic(new int[1], new int[2], 3))
                .hasMessage("1 grades against 2");
    }

    @Test
    void correlationOfTooFewOrOfAConstantIsNotDefined() {
        assertThat(RankCorrelation.spearman(new double[0], new double[0])).isNaN();
        assertThat(RankCorrelation.spearman(new double[] {1, 2}, new double[] {1, 2}))
                .isNaN();
        assertThat(RankCorrelation.spearman(new double[] {1, 1, 1}, new double[] {1, 2, 3}))
                .isNaN();
        assertThat(RankCorrelation.spearman(new double[] {1, 2, 3}, new double[] {4, 5, 9}))
                .isEqualTo(1);
        assertThatThrownBy(() -> RankCorrelation.spearman(new double[1], new double[2]))
                .hasMessage("1 values against 2");
    }

    @Test
    void curveWithoutCandidatesOrWithoutAnythingToFind() {
        assertThat(PrecisionRecallCurve.of(List.of(), 0).averagePrecision()).isNaN();
        assertThat(PrecisionRecallCurve.of(List.of(), 3).averagePrecision()).isZero();
        PrecisionRecallCurve allFalse = PrecisionRecallCurve.of(List.of(new Candidate(0.9, false)), 0);
        assertThat(allFalse.averagePrecision()).isNaN();
        assertThat(allFalse.points().get(0).recall()).isNaN();
        assertThatThrownBy(() -> new Candidate(1.1, true)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void equalProbabilitiesComeInTogether() {
        PrecisionRecallCurve curve = PrecisionRecallCurve.of(
                List.of(new Candidate(0.5, true), new Candidate(0.5, false), new Candidate(0.2, true)), 1);
        assertThat(curve.points())
                .containsExactly(
                        new PrecisionRecallCurve.Point(0.5, 2, 1, 0.5, 1.0 / 3),
                        new PrecisionRecallCurve.Point(0.2, 3, 2, 2.0 / 3, 2.0 / 3));
        assertThat(curve.averagePrecision()).isCloseTo(0.5 / 3 + 2.0 / 9, Offset.offset(1e-12));
    }

    @Test
    void reliabilityKeepsEmptyBinsAndTheTopEdge() {
        Reliability none = Reliability.of(List.of(), 2);
        assertThat(none.bins()).hasSize(2);
        assertThat(none.brier()).isNaN();
        assertThat(none.calibrationError()).isNaN();
        assertThat(none.bins().get(0).interval().known()).isFalse();
        Reliability some = Reliability.of(
                List.of(new Candidate(1, true), new Candidate(0.5, false), new Candidate(0.25, false)), 2);
        assertThat(some.bins().get(1).count()).isEqualTo(2);
        assertThat(some.bins().get(1).meanProbability()).isEqualTo(0.75);
        assertThat(some.bins().get(1).realShare()).isEqualTo(0.5);
        assertThat(some.bins().get(1).from()).isEqualTo(0.5);
        assertThat(some.bins().get(1).to()).isEqualTo(1);
        assertThat(some.bins().get(0).count()).isEqualTo(1);
        // Two candidates 0.25 off, one 0.25 off.
        assertThat(some.calibrationError()).isCloseTo(0.25, Offset.offset(1e-12));
        assertThat(some.brier()).isCloseTo((0.25 + 0.0625) / 3, Offset.offset(1e-12));
        assertThatThrownBy(() -> Reliability.of(List.of(), 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void sharesOfAllAndNone() {
        assertThat(WilsonInterval.of(0, 0, 0.9).known()).isFalse();
        assertThat(WilsonInterval.of(5, 5, 0.9).high()).isEqualTo(1);
        assertThatThrownBy(() -> WilsonInterval.of(2, 1, 0.9)).hasMessage("2 successes in 1 trials");
        assertThatThrownBy(() -> WilsonInterval.of(-1, 1, 0.9)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> WilsonInterval.of(0, 1, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void errorsOfNothingOneAndThree() {
        ErrorSummary none = ErrorSummary.of(new double[0]);
        assertThat(none.count()).isZero();
        assertThat(none.bias()).isNaN();
        assertThat(none.medianAbsolute()).isNaN();
        ErrorSummary one = ErrorSummary.of(new double[] {-2});
        assertThat(one.bias()).isEqualTo(-2);
        assertThat(one.spread()).isNaN();
        assertThat(one.medianAbsolute()).isEqualTo(2);
        ErrorSummary three = ErrorSummary.of(new double[] {-3, 0, 6});
        assertThat(three.bias()).isEqualTo(1);
        assertThat(three.spread()).isCloseTo(Math.sqrt(21), Offset.offset(1e-12));
        assertThat(three.medianAbsolute()).isEqualTo(3);
        assertThat(three.ninetiethAbsolute()).isCloseTo(5.4, Offset.offset(1e-12));
        assertThatThrownBy(() -> Quantiles.of(new double[] {1}, 1.5)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void intervalsThatCannotBe() {
        assertThatThrownBy(() -> new Interval(2, 1, 0.9)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Interval(Double.NaN, 1, 0.9)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Interval(0, 1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThat(Interval.unknown(0.9).contains(0)).isFalse();
        assertThat(new Interval(0, 1, 0.9).contains(1)).isTrue();
        assertThat(new Interval(0, 1, 0.9).contains(0)).isTrue();
        assertThat(new Interval(0, 1, 0.9).contains(1.01)).isFalse();
        assertThat(new Interval(0, 1, 0.9).contains(-0.01)).isFalse();
    }
}
