package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.statistics.Normal;

/** Measures the gap between two bodies, taken as circles of 0.25 m around the pelvis (the legal cylinder). */
final class ContactMeter {

    /** Radius of the body's envelope on the floor, metres. */
    static final double BODY_RADIUS_METRES = 0.25;

    private static final double CLEAR_METRES = 0.5;
    private static final double LEAST_ERROR_METRES = 0.001;

    private final double contactGap;
    private final int contactTicks;

    ContactMeter(Standards standards) {
        this.contactGap = standards.of(Setting.SCREEN_CONTACT_GAP);
        this.contactTicks = Math.max(1, UniformClock.ticks(standards.of(Setting.SCREEN_CONTACT_DURATION)));
    }

    /** The gap at an index, metres. */
    static Estimate gap(PlayerPath a, PlayerPath b, int i) {
        return new Estimate(a.distanceTo(b, i) - 2 * BODY_RADIUS_METRES, a.distanceError(b, i));
    }

    /**
     * Probability that the gap was at most the contact gap for the contact time somewhere between two indexes. Over so short
     * a time the errors go together, so one gap stands for all: the widest of the stretch in which that is least.
     *
     * <p>Bodies do not overlap, and a screener either meets the defender or stands clear of him. So, before anything is seen,
     * as many screens as not have a gap spread evenly over 0 to the contact gap, the others over half a metre beyond, and what
     * was seen weighs the two (Bayes).
     */
    double contactProbability(PlayerPath a, PlayerPath b, int from, int to) {
        double least = Double.POSITIVE_INFINITY;
        double error = 0;
        for (int start = from; start + contactTicks <= to; start++) {
            int widest = widest(a, b, start);
            if (widest >= 0 && gap(a, b, widest).value() < least) {
                least = gap(a, b, widest).value();
                error = gap(a, b, widest).error();
            }
        }
        return Double.isInfinite(least) ? 0 : touching(Math.max(0, least), Math.max(LEAST_ERROR_METRES, error));
    }

    /** When the gap is widest in a stretch of the contact time; -1 where not all of it was seen. */
    private int widest(PlayerPath a, PlayerPath b, int start) {
        int widest = -1;
        for (int i = start; i <= start + contactTicks; i++) {
            if (!a.seen(i) || !b.seen(i)) {
                return -1;
            }
            widest = widest < 0 || a.distanceTo(b, i) > a.distanceTo(b, widest) ? i : widest;
        }
        return widest;
    }

    private double touching(double gap, double error) {
        double near = Normal.atMost(contactGap, gap, error) - Normal.atMost(0, gap, error);
        double clear = Normal.atMost(contactGap + CLEAR_METRES, gap, error) - Normal.atMost(contactGap, gap, error);
        double touch = near / Math.max(LEAST_ERROR_METRES, contactGap);
        double stands = clear / CLEAR_METRES;
        return touch + stands > 0 ? touch / (touch + stands) : 0;
    }

    /** How long the mean gap was at most the contact gap, seconds. */
    double contactSeconds(PlayerPath a, PlayerPath b, int from, int to) {
        int ticks = 0;
        for (int i = from; i <= to; i++) {
            if (a.seen(i) && b.seen(i) && gap(a, b, i).value() <= contactGap) {
                ticks++;
            }
        }
        return ticks / (double) UniformClock.RATE_HERTZ;
    }
}
