package floorgauge.eval.tracking;

/** What became of one truth, or of one result without a truth, in one frame. */
public enum TrackingEventKind {
    /** A truth and a result were matched, with the identity the truth was matched with last, or for the first time. */
    MATCH,
    /** A truth and a result were matched, but the truth's last match was with another identity. */
    SWITCH,
    /** A truth without a result. */
    MISS,
    /** A result without a truth. */
    FALSE_ALARM;

    /** Whether a truth and a result were brought together. */
    public boolean paired() {
        return this == MATCH || this == SWITCH;
    }
}
