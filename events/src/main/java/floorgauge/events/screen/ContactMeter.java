package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;

/** Measures the gap between two bodies, taken as circles of 0.25 m around the pelvis (the legal cylinder). */
final class ContactMeter {

    /** Radius of the body's envelope on the floor, metres. */
    static final double BODY_RADIUS_METRES = 0.25;

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
     * a time the errors go together, so a stretch is as probable as its least probable instant; stretches overlap, so the
     * best of them stands for all.
     */
    double contactProbability(PlayerPath a, PlayerPath b, int from, int to) {
        return withinProbability(contactGap, a, b, from, to);
    }

    /** The same for another gap, metres. */
    double withinProbability(double gap, PlayerPath a, PlayerPath b, int from, int to) {
        double best = 0;
        for (int start = from; start + contactTicks <= to; start++) {
            double least = 1;
            for (int i = start; i <= start + contactTicks && least > best; i++) {
                boolean seen = a.seen(i) && b.seen(i);
                least = seen ? Math.min(least, a.within(gap + 2 * BODY_RADIUS_METRES, b, i)) : 0;
            }
            best = Math.max(best, least);
        }
        return best;
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
