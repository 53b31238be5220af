package floorgauge.events.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.correlation.KendallsCorrelation;
import org.junit.jupiter.api.Test;

/** The statistics of trends against published examples and a reference library. */
class TrendReferenceTest {

    /** Little, "MannKendallByHand", College of the Holy Cross, 2007: 18 falls, 72 rises, S = 54, Z = 2.9058, p = .0018 on one side. */
    @Test
    void mannKendallAgreesWithLittlesExampleByHand() {
        double[] values = {12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7};
        MannKendall test = MannKendall.of(times(values.length), values);
        assertThat(test.s()).isEqualTo(54);
        assertThat(test.variance()).isEqualTo((14.0 * 13 * 33 - 2 * 1 * 9) / 18, within(1e-9));
        assertThat(test.z()).isEqualTo(2.9058, within(5e-5));
        assertThat(test.p() / 2).isEqualTo(0.0018, within(5e-5));
    }

    /**
     * Hollander, Wolfe and Chicken, Nonparametric Statistical Methods, third edition, example 9.1 (cloud seeding): C = -6, one-sided
     * P = .117, slope -.05625 (from memory; the data as in R's NSM3::theil).
     */
    @Test
    void slopeAndExactTestAgreeWithTheCloudSeedingExample() {
        double[] values = {1.26, 1.27, 1.12, 1.16, 1.03};
        MannKendall test = MannKendall.of(times(5), values);
        assertThat(test.s()).isEqualTo(-6);
        assertThat(test.p() / 2).isEqualTo(0.117, within(5e-4));
        assertThat(TheilSen.of(times(5), values, 0.9).slope()).isEqualTo(-0.05625, within(1e-12));
    }

    /** The example of R's statpsych::ci.theil (Bonett), whose times have ties: slope 0.5, 95 % interval 0.3243243 to 0.75. */
    @Test
    void slopeWithTiesAgreesWithThePublishedExampleOfStatpsych() {
        double[] y = {21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19};
        double[] x = {67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51};
        TheilSen slope = TheilSen.of(x, y, 0.95);
        assertThat(slope.slope()).isEqualTo(0.5, within(1e-12));
        assertThat(slope.interval().orElseThrow().low()).isEqualTo(0.3243243, within(5e-8));
        assertThat(slope.interval().orElseThrow().high()).isEqualTo(0.75, within(1e-12));
    }

    /** Hipparchus' tau-b, of which S is the numerator, on values with ties. */
    @Test
    void sAgreesWithHipparchusKendallCorrelation() {
        long seed = 20261;
        SplittableRandom random = new SplittableRandom(seed);
        for (int trial = 0; trial < 50; trial++) {
            int n = 4 + random.nextInt(40);
            double[] x = random.ints(n, 0, 12).asDoubleStream().toArray();
            double[] y = random.ints(n, 0, 9).asDoubleStream().toArray();
            double tauB = new KendallsCorrelation().correlation(x, y);
            double pairs = n * (n - 1) / 2.0;
            double scale = Math.sqrt((pairs - tied(x)) * (pairs - tied(y)));
            if (scale > 0) {
                assertThat(MannKendall.of(x, y).s() / scale)
                        .as("seed %d, trial %d", seed, trial)
                        .isEqualTo(tauB, within(1e-12));
            }
        }
    }

    /** Kendall's variance with ties in both, against the variance of S over random orders. */
    @Test
    void varianceWithTiesIsThatOfRandomOrders() {
        long seed = 77;
        SplittableRandom random = new SplittableRandom(seed);
        double[] x = {0, 0, 0, 1, 1, 2, 3, 3, 3, 3, 4, 5};
        double[] y = {1, 1, 2, 2, 2, 2, 3, 4, 4, 5, 6, 6};
        double squares = 0;
        int orders = 40_000;
        for (int k = 0; k < orders; k++) {
            for (int i = y.length - 1; i > 0; i--) {
                int j = random.nextInt(i + 1);
                double swapped = y[i];
                y[i] = y[j];
                y[j] = swapped;
            }
            squares += Math.pow(MannKendall.of(x, y).s(), 2);
        }
        double variance = MannKendall.of(x, y).variance();
        assertThat(squares / orders).as("seed %d", seed).isEqualTo(variance, within(0.03 * variance));
    }

    /**
     * Efron and Morris, 1977, "Stein's paradox in statistics", Scientific American 236: hits of 18 batters in 45 turns each; the
     * shrinking factor is .212, the best batter's .400 becomes .294, the worst one's .156 becomes .242 (from memory).
     */
    @Test
    void shrinkageAgreesWithEfronAndMorris() {
        int[] hits = {18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7};
        double[] means = Arrays.stream(hits).mapToDouble(h -> h / 45.0).toArray();
        double grand = Arrays.stream(means).average().orElseThrow();
        double[] variances = new double[means.length];
        Arrays.fill(variances, grand * (1 - grand) / 45);
        EmpiricalBayes shrunk = EmpiricalBayes.shrink(means, variances);
        assertThat(shrunk.teamMean()).isEqualTo(0.265, within(5e-4));
        assertThat((shrunk.means()[0] - grand) / (means[0] - grand)).isEqualTo(0.212, within(2e-3));
        assertThat(shrunk.means()[0]).isEqualTo(0.294, within(1e-3));
        assertThat(shrunk.means()[17]).isEqualTo(0.242, within(1e-3));
    }

    /** Where possessions hold one value each, the interval comes near Student's (Hipparchus' t distribution). */
    @Test
    void bootstrapIntervalComesNearStudentsInterval() {
        long seed = 5;
        SplittableRandom random = new SplittableRandom(seed);
        int n = 60;
        double[] values = random.doubles(n)
                .map(u -> new NormalDistribution().inverseCumulativeProbability(u))
                .toArray();
        double mean = Arrays.stream(values).average().orElseThrow();
        double deviation = Math.sqrt(
                Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / (n - 1));
        double reach = new TDistribution(n - 1).inverseCumulativeProbability(0.95) * deviation / Math.sqrt(n);
        Interval interval = PossessionBootstrap.interval(
                        Arrays.stream(values).mapToObj(v -> new double[] {v}).toList(), TrendSettings.usual())
                .orElseThrow();
        assertThat(interval.low()).as("seed %d", seed).isEqualTo(mean - reach, within(0.1 * reach));
        assertThat(interval.high()).as("seed %d", seed).isEqualTo(mean + reach, within(0.1 * reach));
    }

    /** The share of intervals that hold the true mean, with values of one possession drawn together. */
    @Test
    void bootstrapIntervalsHoldTheTrueMeanAsOftenAsTheySay() {
        long seed = 9;
        SplittableRandom random = new SplittableRandom(seed);
        NormalDistribution normal = new NormalDistribution();
        int held = 0;
        int trials = 600;
        for (int trial = 0; trial < trials; trial++) {
            List<double[]> possessions = IntStream.range(0, 15)
                    .mapToObj(p -> {
                        double shared = normal.inverseCumulativeProbability(random.nextDouble(1e-9, 1));
                        return random.doubles(3, 1e-9, 1)
                                .map(u -> shared + 0.5 * normal.inverseCumulativeProbability(u))
                                .toArray();
                    })
                    .toList();
            Interval interval = PossessionBootstrap.interval(possessions, new TrendSettings(0.9, 500, trial + 1))
                    .orElseThrow();
            held += interval.holds(0) ? 1 : 0;
        }
        assertThat(held / (double) trials).as("seed %d", seed).isBetween(0.86, 0.94);
    }

    @Test
    void normalQuantilesAgreeWithHipparchus() {
        for (double p : new double[] {1e-6, 0.05, 0.5, 0.95, 0.975, 1 - 1e-6}) {
            assertThat(Quantile.normal(p))
                    .isEqualTo(new NormalDistribution().inverseCumulativeProbability(p), within(1e-9));
        }
    }

    private static double[] times(int n) {
        return IntStream.rangeClosed(1, n).asDoubleStream().toArray();
    }

    private static double tied(double[] values) {
        double tied = 0;
        for (int i = 0; i < values.length; i++) {
            for (int j = i + 1; j < values.length; j++) {
                tied += values[i] == values[j] ? 1 : 0;
            }
        }
        return tied;
    }
}
