package floorgauge.sampleclips.labels.scene;

import floorgauge.sampleclips.movement.FloorVector;
import java.util.OptionalDouble;

/**
 * The figures of one screen, by the definitions of screens and their quality.
 *
 * @param gapMetres least gap between the envelopes of screener and defender
 * @param contactSeconds longest unbroken time with a gap of at most 0.10 m
 * @param setShare share of the half second before the screen in which the screener moves at most 0.5 m/s
 * @param screenerSpeed mean in that half second
 * @param squareness |cos| of the screener's facing against the defender's way; empty where the defender stands
 * @param brushMetres least distance of user and screener
 * @param separationMetres gained in the 1.5 s after
 * @param lostSeconds until the defender is within 1.2 m of the user again; empty where the scene ends before
 * @param speedAtContact mean speed of the screener in the fifths of a second before and after
 */
record ScreenMeasures(
        double gapMetres,
        double contactSeconds,
        double setShare,
        double screenerSpeed,
        OptionalDouble squareness,
        double brushMetres,
        double separationMetres,
        OptionalDouble lostSeconds,
        double speedAtContact) {

    static final double CONTACT_GAP = 0.10;
    static final double CONTACT_SECONDS = 0.12;
    static final double STILL = 0.5;

    private static final double BEFORE = 0.5;
    private static final double ABOUT = 0.2;
    private static final double AROUND = 1.0;
    private static final double AFTER = 1.5;
    private static final double CAUGHT_UP = 1.2;

    /** @param at tick of the screen */
    static ScreenMeasures of(Motion motion, int at, int screener, int user, int defender) {
        int from = motion.tick(motion.time(at) - AROUND);
        int to = motion.tick(motion.time(at) + AFTER);
        double gap = Double.MAX_VALUE;
        double brush = Double.MAX_VALUE;
        int run = 0;
        int longest = 0;
        for (int i = from; i <= to; i++) {
            double now = motion.gap(i, screener, defender);
            gap = Math.min(gap, now);
            brush = Math.min(brush, motion.distance(i, screener, user));
            run = now <= CONTACT_GAP ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return new ScreenMeasures(
                gap,
                longest * Motion.TICK,
                setShare(motion, at, screener),
                meanSpeed(motion, motion.tick(motion.time(at) - BEFORE), at, screener),
                squareness(motion, at, screener, defender),
                brush,
                separation(motion, at, user, defender),
                lost(motion, at, user, defender),
                meanSpeed(
                        motion, motion.tick(motion.time(at) - ABOUT), motion.tick(motion.time(at) + ABOUT), screener));
    }

    private static double setShare(Motion motion, int at, int screener) {
        int from = motion.tick(motion.time(at) - BEFORE);
        int still = 0;
        for (int i = from; i <= at; i++) {
            still += motion.speed(i, screener) <= STILL ? 1 : 0;
        }
        return (double) still / (at - from + 1);
    }

    private static double meanSpeed(Motion motion, int from, int to, int screener) {
        double sum = 0;
        for (int i = from; i <= to; i++) {
            sum += motion.speed(i, screener);
        }
        return sum / (to - from + 1);
    }

    /** Against the defender's mean velocity in the 0.3 s about the screen. */
    private static OptionalDouble squareness(Motion motion, int at, int screener, int defender) {
        int from = motion.tick(motion.time(at) - 0.15);
        int to = motion.tick(motion.time(at) + 0.15);
        FloorVector way = motion.position(to, defender).minus(motion.position(from, defender));
        if (way.length() < 0.15) {
            return OptionalDouble.empty();
        }
        FloorVector facing = FloorVector.direction(motion.person(at, screener).facingRadians());
        return OptionalDouble.of(Math.abs(facing.dot(way.unit())));
    }

    private static double separation(Motion motion, int at, int user, int defender) {
        double before = motion.distance(motion.tick(motion.time(at) - 0.3), user, defender);
        double most = 0;
        for (int i = at; i <= motion.tick(motion.time(at) + AFTER); i++) {
            most = Math.max(most, motion.distance(i, user, defender));
        }
        return most - before;
    }

    private static OptionalDouble lost(Motion motion, int at, int user, int defender) {
        boolean lost = false;
        int end = motion.tick(motion.time(at) + 4);
        for (int i = at; i < end; i++) {
            boolean near = motion.distance(i, user, defender) <= CAUGHT_UP;
            if (near && (lost || motion.time(i) - motion.time(at) > AFTER)) {
                return OptionalDouble.of(lost ? motion.time(i) - motion.time(at) : 0);
            }
            lost |= !near;
        }
        return lost ? OptionalDouble.empty() : OptionalDouble.of(0);
    }

    /** Quality, 0 to 100: the parts by their weights; a part that does not exist is left out and the rest re-weighted. */
    double quality(double stance) {
        double sum = 0;
        double weight = 0;
        double contact = contactSeconds >= CONTACT_SECONDS ? 1 : 0;
        double[][] parts = {
            {0.30, contact},
            {0.15, setShare},
            {0.10, share(stance, 1.0, 1.5)},
            {0.10, squareness.orElse(Double.NaN)},
            {0.10, share(brushMetres, 1.5, 0.5)},
            {0.25, share(separationMetres, 0, 1.5)},
        };
        for (double[] part : parts) {
            if (!Double.isNaN(part[1])) {
                sum += part[0] * part[1];
                weight += part[0];
            }
        }
        return 100 * sum / weight;
    }

    private static double share(double value, double none, double full) {
        return Math.max(0, Math.min(1, (value - none) / (full - none)));
    }
}
