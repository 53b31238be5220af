package floorgauge.eval.statistics;

/**
 * An interval that holds the true value with a stated confidence.
 *
 * @param low lower end; NaN where no interval can be given
 * @param high upper end, at or above the lower; NaN where no interval can be given
 * @param confidence 0 to 1
 */
public record Interval(double low, double high, double confidence) {

    /** The project's own: figures carry 90 % intervals. */
    public static final double USUAL_CONFIDENCE = 0.90;

    public Interval {
        if (low > high || Double.isNaN(low) != Double.isNaN(high)) {
            throw new IllegalArgumentException("an interval ends after its start: " + low + " to " + high);
        }
        requireConfidence(confidence);
    }

    /** Too little was seen to give an interval. */
    public static Interval unknown(double confidence) {
        return new Interval(Double.NaN, Double.NaN, confidence);
    }

    public boolean known() {
        return !Double.isNaN(low);
    }

    /** Whether the value lies inside, ends included; false where the interval is not known. */
    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    static double requireConfidence(double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException("a confidence lies between 0 and 1: " + confidence);
        }
        return confidence;
    }
}
