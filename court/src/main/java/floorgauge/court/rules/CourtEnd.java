package floorgauge.court.rules;

/** One of the two ends of a court. */
public enum CourtEnd {
    /** The end with x below 0. */
    NEGATIVE_X(-1),
    /** The end with x above 0. */
    POSITIVE_X(1);

    private final int sign;

    CourtEnd(int sign) {
        this.sign = sign;
    }

    /** -1 or 1: the sign of x at this end. */
    public int sign() {
        return sign;
    }
}
