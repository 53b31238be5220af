package floorgauge.events.trend;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * The interval of a mean by drawing whole possessions with replacement: values of one possession share their lineup, opponent
 * and camera, so they are not independent. Percentile interval (Efron and Tibshirani, 1993, An Introduction to the Bootstrap,
 * chapter 13), its deviations widened by √(m / (m - 1)) for m possessions, because resampling few of them spreads too little
 * (the same book, section 5.3).
 */
final class PossessionBootstrap {

    private PossessionBootstrap() {}

    /**
     * @param possessions the values of each, none empty
     * @return empty below two possessions
     */
    static Optional<Interval> interval(List<double[]> possessions, TrendSettings settings) {
        int m = possessions.size();
        if (m < 2) {
            return Optional.empty();
        }
        double[] sums = new double[m];
        int[] counts = new int[m];
        for (int k = 0; k < m; k++) {
            sums[k] = Arrays.stream(possessions.get(k)).sum();
            counts[k] = possessions.get(k).length;
        }
        double mean = Arrays.stream(sums).sum() / Arrays.stream(counts).sum();
        double[] means = means(sums, counts, settings);
        double widen = Math.sqrt(m / (m - 1.0));
        double tail = (1 - settings.confidence()) / 2;
        return Optional.of(new Interval(
                mean + widen * (Quantile.ofSorted(means, tail) - mean),
                mean + widen * (Quantile.ofSorted(means, 1 - tail) - mean)));
    }

    private static double[] means(double[] sums, int[] counts, TrendSettings settings) {
        SplittableRandom random = new SplittableRandom(settings.seed());
        double[] means = new double[settings.resamples()];
        for (int r = 0; r < means.length; r++) {
            double sum = 0;
            long count = 0;
            for (int k = 0; k < sums.length; k++) {
                int drawn = random.nextInt(sums.length);
                sum += sums[drawn];
                count += counts[drawn];
            }
            means[r] = sum / count;
        }
        Arrays.sort(means);
        return means;
    }
}
