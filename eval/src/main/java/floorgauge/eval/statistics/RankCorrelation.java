package floorgauge.eval.statistics;

import org.hipparchus.stat.correlation.SpearmansCorrelation;

/** Spearman's rank correlation, ties by mean rank. */
public final class RankCorrelation {

    /** Two points always lie on a line. */
    private static final int FEWEST = 3;

    private RankCorrelation() {}

    /** -1 to 1; NaN below three pairs, or where either side never changes. */
    public static double spearman(double[] first, double[] second) {
        if (first.length != second.length) {
            throw new IllegalArgumentException(first.length + " values against " + second.length);
        }
        return first.length < FEWEST ? Double.NaN : new SpearmansCorrelation().correlation(first, second);
    }
}
