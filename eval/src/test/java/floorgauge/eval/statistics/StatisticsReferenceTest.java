package floorgauge.eval.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.eval.statistics.PrecisionRecallCurve.Candidate;
import java.util.List;
import java.util.SplittableRandom;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Statistics against published examples and reference libraries. */
class StatisticsReferenceTest {

    /** Cohen (1968), table 1, as R's psych package carries it: weights 1, 3, 6, weighted kappa 0.348, kappa 0.492. */
    @Test
    void cohensOwnWeightedKappa() {
        double[][] table = {{0.44, 0.07, 0.09}, {0.05, 0.20, 0.05}, {0.01, 0.03, 0.06}};
        double[][] weights = {{0, 1, 3}, {1, 0, 6}, {3, 6, 0}};
        assertThat(WeightedKappa.of(table, (i, j) -> weights[i][j])).isCloseTo(0.348, Offset.offset(5e-4));
        assertThat(WeightedKappa.of(table, (i, j) -> i == j ? 0 : 1)).isCloseTo(0.492, Offset.offset(5e-4));
    }

    /** The first example of R's psych::cohen.kappa: quadratic weighted kappa 0.68, unweighted 0.00 (memory). */
    @Test
    void quadraticKappaOfNinePairs() {
        int[] first = {0, 1, 2, 3, 4, 5, 6, 7, 8};
        int[] second = {0, 2, 0, 5, 0, 4, 4, 5, 6};
        assertThat(WeightedKappa.quadratic(first, second, 9)).isCloseTo(0.68, Offset.offset(5e-3));
    }

    /**
     * Quadratic weighted kappa equals the concordance correlation {@code 2 cov / (var + var + (mean - mean)^2)} with sums
     * over n (Fleiss and Cohen, 1973, "The equivalence of weighted kappa and the intraclass correlation coefficient").
     */
    @Test
    void quadraticKappaIsTheConcordanceOfTheGrades() {
        long seed = 11;
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 50; round++) {
            int[] first = random.ints(40, 0, 5).toArray();
            int[] second = random.ints(40, 0, 5).toArray();
            assertThat(WeightedKappa.quadratic(first, second, 5))
                    .as("seed %d, round %d", seed, round)
                    .isCloseTo(concordance(first, second), Offset.offset(1e-12));
        }
    }

    /** SciPy's documentation of {@code scipy.stats.spearmanr}: ranks 1..5 against 5, 6, 7, 8, 7 give 0.8207826816681233. */
    @Test
    void spearmanOfAReferenceLibrary() {
        assertThat(RankCorrelation.spearman(new double[] {1, 2, 3, 4, 5}, new double[] {5, 6, 7, 8, 7}))
                .isCloseTo(0.8207826816681233, Offset.offset(1e-12));
    }

    /** The textbook example of intelligence against hours of television: -29 / 165 (memory). */
    @Test
    void spearmanOfATextbook() {
        double[] first = {106, 86, 100, 101, 99, 103, 97, 113, 112, 110};
        double[] second = {7, 0, 27, 50, 28, 29, 20, 12, 6, 17};
        assertThat(RankCorrelation.spearman(first, second)).isCloseTo(-29.0 / 165, Offset.offset(1e-12));
    }

    /** scikit-learn's documentation of {@code average_precision_score}: labels 0, 0, 1, 1, scores .1, .4, .35, .8: 0.83. */
    @Test
    void averagePrecisionOfAReferenceLibrary() {
        PrecisionRecallCurve curve = PrecisionRecallCurve.of(
                List.of(
                        new Candidate(0.1, false),
                        new Candidate(0.4, false),
                        new Candidate(0.35, true),
                        new Candidate(0.8, true)),
                0);
        assertThat(curve.averagePrecision()).isCloseTo(1.0 / 2 + 1.0 / 2 * 2 / 3, Offset.offset(1e-12));
        assertThat(curve.averagePrecision()).isCloseTo(0.83, Offset.offset(5e-3));
    }

    /** scikit-learn's documentation of {@code brier_score_loss}: labels 0, 1, 1, 0, probabilities .1, .9, .8, .3: 0.0375. */
    @Test
    void brierScoreOfAReferenceLibrary() {
        Reliability reliability = Reliability.of(
                List.of(
                        new Candidate(0.1, false),
                        new Candidate(0.9, true),
                        new Candidate(0.8, true),
                        new Candidate(0.3, false)),
                10);
        assertThat(reliability.brier()).isCloseTo(0.0375, Offset.offset(1e-12));
    }

    /** Newcombe (1998), table I: 81 of 263, 95 % score interval 0.2553 to 0.3662; 0 of 20: 0 to 0.1611. */
    @Test
    void wilsonsIntervalOfAPaper() {
        Interval interval = WilsonInterval.of(81, 263, 0.95);
        assertThat(interval.low()).isCloseTo(0.2553, Offset.offset(5e-5));
        assertThat(interval.high()).isCloseTo(0.3662, Offset.offset(5e-5));
        assertThat(WilsonInterval.of(0, 20, 0.95).low()).isZero();
        assertThat(WilsonInterval.of(0, 20, 0.95).high()).isCloseTo(0.1611, Offset.offset(5e-5));
    }

    /** NumPy's documentation of {@code numpy.percentile}: the median of 10, 7, 4, 3, 2, 1 is 3.5. */
    @Test
    void quantilesOfAReferenceLibrary() {
        double[] values = {10, 7, 4, 3, 2, 1};
        assertThat(Quantiles.median(values)).isEqualTo(3.5);
        assertThat(Quantiles.of(values, 0.9)).isCloseTo(8.5, Offset.offset(1e-12));
        assertThat(Quantiles.of(values, 0)).isEqualTo(1);
        assertThat(Quantiles.of(values, 1)).isEqualTo(10);
    }

    private static double concordance(int[] first, int[] second) {
        double meanFirst = java.util.Arrays.stream(first).average().orElseThrow();
        double meanSecond = java.util.Arrays.stream(second).average().orElseThrow();
        double covariance = 0;
        double variances = 0;
        for (int i = 0; i < first.length; i++) {
            covariance += (first[i] - meanFirst) * (second[i] - meanSecond);
            variances += Math.pow(first[i] - meanFirst, 2) + Math.pow(second[i] - meanSecond, 2);
        }
        double gap = meanFirst - meanSecond;
        return 2 * covariance / (variances + first.length * gap * gap);
    }
}
