package floorgauge.events.trend;

import floorgauge.events.statistics.Normal;

/** Quantiles of a sample and of the standard normal distribution. */
final class Quantile {

    private static final double FARTHEST = 40;

    private Quantile() {}

    /** By linear interpolation between the order statistics at 1 + (n - 1) p, R's type 7 (Hyndman and Fan, 1996). */
    static double ofSorted(double[] sorted, double p) {
        double place = (sorted.length - 1) * p;
        int below = (int) Math.floor(place);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /** The z that a standard normal value stays below with probability p, by halving. */
    static double normal(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a probability lies between 0 and 1: " + p);
        }
        double low = -FARTHEST;
        double high = FARTHEST;
        while (true) {
            double middle = (low + high) / 2;
            if (middle <= low || middle >= high) {
                return middle;
            }
            if (Normal.cumulative(middle) < p) {
                low = middle;
            } else {
                high = middle;
            }
        }
    }
}
