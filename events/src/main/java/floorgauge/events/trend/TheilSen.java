package floorgauge.events.trend;

import java.util.Arrays;
import java.util.Optional;

/**
 * The median of the slopes between all pairs of points (Theil, 1950; Sen, 1968, "Estimates of the regression coefficient based
 * on Kendall's tau", JASA 63), with the interval that belongs to it (Hollander, Wolfe and Chicken, Nonparametric Statistical
 * Methods, section 9.3; large samples): of N sorted slopes the m-th from either end, m = (N - C) / 2 rounded, where C is the normal quantile
 * times the standard deviation of Kendall's S, ties counted. Pairs of one time have no slope.
 *
 * @param slope value per unit of time
 * @param interval empty where there are too few pairs for it
 */
record TheilSen(double slope, Optional<Interval> interval) {

    /** Up to here all slopes are written out and sorted; beyond, the wanted ones are found by counting. */
    private static final int MOST_WRITTEN_OUT = 1500;

    /**
     * @param times as long as the values, two different ones at least
     * @param values finite
     * @param confidence of the interval
     */
    static TheilSen of(double[] times, double[] values, double confidence) {
        PairSlopes slopes = times.length <= MOST_WRITTEN_OUT
                ? SortedPairSlopes.of(times, values)
                : CountedPairSlopes.of(times, values);
        long n = slopes.count();
        if (n == 0) {
            throw new IllegalArgumentException("a slope needs two different times");
        }
        double middle = (slopes.smallest((n - 1) / 2) + slopes.smallest(n / 2)) / 2;
        double spread = Quantile.normal((1 + confidence) / 2)
                * Math.sqrt(MannKendall.of(times, values).variance());
        long low = Math.round((n - spread) / 2);
        Optional<Interval> interval = low < 1
                ? Optional.empty()
                : Optional.of(new Interval(slopes.smallest(low - 1), slopes.smallest(n - low)));
        return new TheilSen(middle, interval);
    }

    /** The slopes between all pairs of points of different times, in order. */
    interface PairSlopes {

        long count();

        /** @param rank from 0 */
        double smallest(long rank);
    }

    /** All written out: simple, and as fast as need be for a few hundred points. */
    record SortedPairSlopes(double[] sorted) implements PairSlopes {

        static SortedPairSlopes of(double[] times, double[] values) {
            double[] slopes = new double[times.length * (times.length - 1) / 2];
            int n = 0;
            for (int i = 0; i < times.length; i++) {
                for (int j = i + 1; j < times.length; j++) {
                    if (times[i] != times[j]) {
                        slopes[n++] = (values[j] - values[i]) / (times[j] - times[i]);
                    }
                }
            }
            double[] sorted = Arrays.copyOf(slopes, n);
            Arrays.sort(sorted);
            return new SortedPairSlopes(sorted);
        }

        @Override
        public long count() {
            return sorted.length;
        }

        @Override
        public double smallest(long rank) {
            return sorted[(int) rank];
        }
    }
}
