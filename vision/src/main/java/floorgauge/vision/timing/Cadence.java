package floorgauge.vision.timing;

/** Picks frames at about even times, whatever the film's rate. Not safe for use by several threads. */
public final class Cadence {

    /** A frame a quarter of an interval early is nearer the wanted instant than the next one may be. */
    private static final double EARLIEST = 0.75;

    private final double intervalSeconds;
    private double next = Double.NEGATIVE_INFINITY;

    /** @param intervalSeconds wanted between two frames */
    public Cadence(double intervalSeconds) {
        this.intervalSeconds = intervalSeconds;
    }

    /** Whether it is time; if so, the next interval begins. Asked in order of time. */
    public boolean isDue(double timeSeconds) {
        if (timeSeconds < next) {
            return false;
        }
        next = timeSeconds + EARLIEST * intervalSeconds;
        return true;
    }
}
