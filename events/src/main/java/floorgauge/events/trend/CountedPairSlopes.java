package floorgauge.events.trend;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Finds the k-th smallest of the slopes between all pairs without writing them out: a pair has a slope below m exactly where
 * y - m t falls from the earlier point to the later, so that pairs below m are inversions, counted by merging in n log n; m is
 * halved in until no number lies between. For thousands of points.
 */
final class CountedPairSlopes implements TheilSen.PairSlopes {

    private static final int MOST_HALVINGS = 1100;

    private final double[] times;
    private final double[] values;
    private final long count;
    private final double least;
    private final double most;

    private CountedPairSlopes(double[] times, double[] values, long count, double least, double most) {
        this.times = times;
        this.values = values;
        this.count = count;
        this.least = least;
        this.most = most;
    }

    static CountedPairSlopes of(double[] times, double[] values) {
        Integer[] order = new Integer[times.length];
        Arrays.setAll(order, i -> i);
        // Points of one time stand with the lower value first, so that they never count as an inversion.
        Arrays.sort(order, Comparator.<Integer>comparingDouble(i -> times[i]).thenComparingDouble(i -> values[i]));
        double[] t = new double[times.length];
        double[] v = new double[times.length];
        for (int i = 0; i < order.length; i++) {
            t[i] = times[order[i]];
            v[i] = values[order[i]];
        }
        double range = Arrays.stream(v).max().orElse(0) - Arrays.stream(v).min().orElse(0);
        double step = leastStep(t);
        double bound = Double.isInfinite(step) ? 0 : range / step;
        return new CountedPairSlopes(t, v, pairs(t), -bound, bound);
    }

    private static double leastStep(double[] sorted) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < sorted.length; i++) {
            if (sorted[i] > sorted[i - 1]) {
                least = Math.min(least, sorted[i] - sorted[i - 1]);
            }
        }
        return least;
    }

    private static long pairs(double[] sorted) {
        long pairs = 0;
        int from = 0;
        while (from < sorted.length) {
            int to = from;
            while (to < sorted.length && sorted[to] == sorted[from]) {
                to++;
            }
            pairs += (long) (to - from) * from;
            from = to;
        }
        return pairs;
    }

    @Override
    public long count() {
        return count;
    }

    @Override
    public double smallest(long rank) {
        double low = least;
        double high = most;
        for (int i = 0; i < MOST_HALVINGS; i++) {
            double middle = low + (high - low) / 2;
            if (middle <= low || middle >= high) {
                break;
            }
            if (below(middle) > rank) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return low;
    }

    /** Pairs with a slope below m. */
    private long below(double m) {
        double[] residuals = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            residuals[i] = values[i] - m * times[i];
        }
        return inversions(residuals, new double[residuals.length], 0, residuals.length);
    }

    private static long inversions(double[] a, double[] spare, int from, int to) {
        if (to - from < 2) {
            return 0;
        }
        int middle = (from + to) >>> 1;
        long count = inversions(a, spare, from, middle) + inversions(a, spare, middle, to);
        int i = from;
        int j = middle;
        for (int k = from; k < to; k++) {
            boolean left = j >= to || (i < middle && a[i] <= a[j]);
            if (!left) {
                count += middle - i;
            }
            spare[k] = left ? a[i++] : a[j++];
        }
        System.arraycopy(spare, from, a, from, to - from);
        return count;
    }
}
