package floorgauge.events.motion;

/** The uniform 25 Hz clock onto which tracks are resampled: tick k is at k / 25 s of the film's presentation time. */
public final class UniformClock {

    /** Ticks a second. */
    public static final int RATE_HERTZ = 25;

    private UniformClock() {}

    /** Presentation time of a tick. */
    public static double seconds(long tick) {
        return tick / (double) RATE_HERTZ;
    }

    /** The first tick at or after a time. */
    public static long atOrAfter(double seconds) {
        return (long) Math.ceil(seconds * RATE_HERTZ - 1e-6);
    }

    /** The nearest tick to a time. */
    public static long nearest(double seconds) {
        return Math.round(seconds * RATE_HERTZ);
    }

    /** Ticks in a span, rounded to the nearest. */
    public static int ticks(double seconds) {
        return (int) Math.round(seconds * RATE_HERTZ);
    }
}
