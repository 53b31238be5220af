package floorgauge.vision.timing;

/** Picks frames at about even times, whatever the film's rate. Asked of every frame, in order. Not safe for use by several threads. */
public final class Cadence {

    /** A frame a quarter of an interval early is nearer the wanted instant than the next one may be. */
    private static final double EARLIEST = 0.75;

    /** Of a film's clock, which counts in milliseconds at worst. */
    private static final double ROUNDING_SECONDS = 0.002;

    private final double intervalSeconds;
    private final boolean neverLater;
    private double taken = Double.NEGATIVE_INFINITY;
    private double before = Double.NEGATIVE_INFINITY;

    private Cadence(double intervalSeconds, boolean neverLater) {
        this.intervalSeconds = intervalSeconds;
        this.neverLater = neverLater;
    }

    /** Frames about this far apart: nearer where no frame lies there, or farther. */
    public static Cadence about(double intervalSeconds) {
        return new Cadence(intervalSeconds, false);
    }

    /** Frames no farther apart than this, as few as the film's rate allows; all of them where that is lower. */
    public static Cadence atMost(double intervalSeconds) {
        return new Cadence(intervalSeconds, true);
    }

    /** Whether to take the frame; the first one always. */
    public boolean isDue(double timeSeconds) {
        double step = timeSeconds - before;
        before = timeSeconds;
        boolean due = neverLater
                ? timeSeconds + step - taken > intervalSeconds + ROUNDING_SECONDS
                : timeSeconds >= taken + EARLIEST * intervalSeconds;
        if (due) {
            taken = timeSeconds;
        }
        return due;
    }
}
