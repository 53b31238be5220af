package floorgauge.eval.statistics;

/** Ratios of counts. */
public final class Ratios {

    private Ratios() {}

    /** {@code part / whole}; NaN where the whole is 0, because a share of nothing is not defined. */
    public static double of(double part, double whole) {
        return whole == 0 ? Double.NaN : part / whole;
    }

    /** The harmonic mean of precision and recall from counts, {@code 2 TP / (2 TP + FP + FN)}; NaN where all are 0. */
    public static double f1(long truePositives, long falsePositives, long falseNegatives) {
        return of(2.0 * truePositives, 2.0 * truePositives + falsePositives + falseNegatives);
    }
}
