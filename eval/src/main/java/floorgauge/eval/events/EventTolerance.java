package floorgauge.eval.events;

/**
 * When a finding may stand for a labelled event.
 *
 * @param seconds greatest distance of the two moments, above 0
 * @param roleShare least share of the roles named by both that are held by the same person, 0 to 1
 */
public record EventTolerance(double seconds, double roleShare) {

    /**
     * One second, about the length of a screen, and half of the roles: two who agree on screener and user but not on a
     * defender speak of the same screen.
     */
    public static final EventTolerance USUAL = new EventTolerance(1.0, 0.5);

    public EventTolerance {
        if (!(seconds > 0 && Double.isFinite(seconds))) {
            throw new IllegalArgumentException("a time is above 0: " + seconds);
        }
        if (!(roleShare >= 0 && roleShare <= 1)) {
            throw new IllegalArgumentException("a share lies in 0 to 1: " + roleShare);
        }
    }

    /** The same roles with another time. */
    public EventTolerance within(double otherSeconds) {
        return new EventTolerance(otherSeconds, roleShare);
    }
}
