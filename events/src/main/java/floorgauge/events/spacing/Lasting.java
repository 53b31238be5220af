package floorgauge.events.spacing;

import java.util.function.IntToDoubleFunction;

/**
 * How probable it is that something lasts. The errors of neighbouring instants go together, so a stretch is as probable as its least
 * probable instant; a long stretch as its most probable part of the time that is asked for.
 */
final class Lasting {

    private Lasting() {}

    /** At which two players part or meet (common practice), m/s: turns an error of distance into one of the moment. */
    private static final double PARTING_SPEED = 1.0;

    /** Of a moment on the uniform clock, seconds. */
    private static final double TICK_ERROR = 0.04;

    /**
     * Standard error of how long a stretch lasted that began and ended as a distance crossed a limit, seconds.
     *
     * @param distanceError standard error of the distance, metres
     */
    static double error(double distanceError) {
        return Math.hypot(TICK_ERROR, Math.sqrt(2) * distanceError / PARTING_SPEED);
    }

    /**
     * The probability that something holds for a time somewhere in a stretch.
     *
     * @param from first index
     * @param to last index
     * @param ticks for as long
     * @param at its probability at an index, 0 to 1
     */
    static double probability(int from, int to, int ticks, IntToDoubleFunction at) {
        double[] each = new double[Math.max(0, to - from + 1)];
        for (int i = 0; i < each.length; i++) {
            each[i] = at.applyAsDouble(from + i);
        }
        double best = 0;
        for (int start = 0; start + ticks < each.length; start++) {
            double least = 1;
            for (int i = start; i <= start + ticks && least > best; i++) {
                least = Math.min(least, each[i]);
            }
            best = Math.max(best, least);
        }
        return best;
    }
}
