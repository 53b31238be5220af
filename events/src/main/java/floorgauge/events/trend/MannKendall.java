package floorgauge.events.trend;

import floorgauge.events.statistics.Normal;
import java.util.Arrays;

/**
 * The Mann-Kendall test for a monotonic trend (Mann, 1945, "Nonparametric tests against trend", Econometrica 13; Kendall,
 * 1975, Rank Correlation Methods). S = Σ sgn(xj - xi) sgn(yj - yi) over all pairs. Without ties and up to ten values the
 * exact distribution of S is taken; else a normal one with Kendall's variance for ties in both time and value, and a
 * correction of 1 for continuity.
 *
 * @param s pairs that rise less pairs that fall
 * @param variance of S where there is no trend
 * @param z S less its continuity correction over its standard deviation; 0 where nothing varies
 * @param p chance of an S as far from 0, either way, where there is no trend
 */
public record MannKendall(long s, double variance, double z, double p) {

    private static final int MOST_EXACT = 10;

    public MannKendall {
        if (!(variance >= 0) || !(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("variance " + variance + ", p " + p);
        }
    }

    /**
     * @param times as long as the values, in any order
     * @param values finite
     */
    public static MannKendall of(double[] times, double[] values) {
        if (times.length != values.length) {
            throw new IllegalArgumentException(times.length + " times for " + values.length + " values");
        }
        long s = 0;
        for (int i = 0; i < times.length; i++) {
            for (int j = i + 1; j < times.length; j++) {
                s += Double.compare(times[j] + 0.0, times[i] + 0.0)
                        * (long) Double.compare(values[j] + 0.0, values[i] + 0.0);
            }
        }
        Ties timeTies = Ties.of(times);
        Ties valueTies = Ties.of(values);
        double variance = variance(times.length, timeTies, valueTies);
        double z = variance > 0 ? (s - Long.signum(s)) / Math.sqrt(variance) : 0;
        boolean exact = times.length <= MOST_EXACT && timeTies.none() && valueTies.none();
        double p = exact ? exact(times.length, Math.abs(s)) : Math.min(1, 2 * Normal.cumulative(-Math.abs(z)));
        return new MannKendall(s, variance, z, p);
    }

    /** Kendall, 1975, with t(t - 1)(2t + 5) and its kin summed over groups of equal times and of equal values. */
    private static double variance(double n, Ties t, Ties u) {
        if (n < 2) {
            return 0;
        }
        double main = (n * (n - 1) * (2 * n + 5) - t.fives - u.fives) / 18;
        double triples = n > 2 ? t.triples * u.triples / (9 * n * (n - 1) * (n - 2)) : 0;
        return Math.max(0, main + triples + t.pairs * u.pairs / (2 * n * (n - 1)));
    }

    /** P(|S| is at least s) from the number of permutations with each number of inversions. */
    private static double exact(int n, long s) {
        double[] counts = {1};
        for (int k = 2; k <= n; k++) {
            double[] next = new double[counts.length + k - 1];
            for (int i = 0; i < counts.length; i++) {
                for (int j = 0; j < k; j++) {
                    next[i + j] += counts[i];
                }
            }
            counts = next;
        }
        int pairs = n * (n - 1) / 2;
        double far = 0;
        for (int inversions = 0; inversions < counts.length; inversions++) {
            far += Math.abs(pairs - 2 * inversions) >= s ? counts[inversions] : 0;
        }
        return Math.min(1, far / Arrays.stream(counts).sum());
    }

    /** Sums over groups of equal values. */
    private record Ties(double fives, double triples, double pairs) {

        static Ties of(double[] values) {
            double[] sorted = Arrays.stream(values).map(v -> v + 0.0).sorted().toArray();
            double fives = 0;
            double triples = 0;
            double pairs = 0;
            int from = 0;
            while (from < sorted.length) {
                int to = from;
                while (to < sorted.length && sorted[to] == sorted[from]) {
                    to++;
                }
                double t = to - from;
                fives += t * (t - 1) * (2 * t + 5);
                triples += t * (t - 1) * (t - 2);
                pairs += t * (t - 1);
                from = to;
            }
            return new Ties(fives, triples, pairs);
        }

        boolean none() {
            return pairs == 0;
        }
    }
}
