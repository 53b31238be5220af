package floorgauge.eval.statistics;

import java.util.Arrays;

/** Quantiles of a sample. */
public final class Quantiles {

    private Quantiles() {}

    /**
     * The quantile by linear interpolation between order statistics, {@code h = (n - 1) p} (Hyndman and Fan, 1996, "Sample
     * quantiles in statistical packages", definition 7).
     *
     * @param sorted ascending, without NaN; empty gives NaN
     * @param p 0 to 1
     */
    public static double ofSorted(double[] sorted, double p) {
        if (!(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("a quantile lies in 0 to 1: " + p);
        }
        if (sorted.length == 0) {
            return Double.NaN;
        }
        double position = (sorted.length - 1) * p;
        int below = (int) Math.floor(position);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
    }

    /** The quantile of values in any order. */
    public static double of(double[] values, double p) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return ofSorted(sorted, p);
    }

    /** NaN for no values. */
    public static double median(double[] values) {
        return of(values, 0.5);
    }
}
