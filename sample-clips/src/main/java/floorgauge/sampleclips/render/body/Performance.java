package floorgauge.sampleclips.render.body;

import floorgauge.sampleclips.movement.Gait;
import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.PersonState;
import java.util.List;

/**
 * One person's course through a scene on a fine, even time grid: the states, the body style with changes of action smoothed
 * out, and both feet. Feet are planted: a foot in stance does not slide, and it is set down where the body will be a little
 * before the middle of that stance, as near before the hips as a leg reaches.
 */
public final class Performance {

    /** Steps a second of the time grid. */
    public static final int RATE = 120;

    private static final double BLEND_SECONDS = 0.12;
    private static final double WALKING = 0.45;
    private static final double CORRECTION_SECONDS = 0.24;
    private static final double CORRECTION_METRES = 0.11;
    private static final double AIRBORNE_METRES = 0.015;

    /** Of a stance, when the hips pass over the ankle: it lands less far ahead than it is left behind (from memory). */
    private static final double OVER_THE_FOOT = 0.38;

    /** Who slides to a side lifts one foot at a time. */
    private static final double SLIDING_SWING_SHARE = 0.5;

    private final Proportions proportions;
    private final List<PersonState> states;
    private final Style[] styles;
    private final double[] speeds;
    private final Foot[] left;
    private final Foot[] right;

    /** @param states of one person, {@link #RATE} a second from time 0 */
    public Performance(List<PersonState> states) {
        this.states = List.copyOf(states);
        proportions = Proportions.of(states.get(0).person());
        styles = smoothStyles();
        speeds = smoothSpeeds();
        left = feet(0, 1);
        right = feet(Math.PI, -1);
    }

    public Proportions proportions() {
        return proportions;
    }

    int index(double timeSeconds) {
        return (int) Math.max(0, Math.min(states.size() - 1.0, Math.floor(timeSeconds * RATE)));
    }

    private double share(double timeSeconds) {
        double at = Math.max(0, Math.min(states.size() - 1.0, timeSeconds * RATE));
        return at - Math.floor(at);
    }

    Style style(double timeSeconds) {
        int i = index(timeSeconds);
        return styles[i].towards(styles[Math.min(i + 1, styles.length - 1)], share(timeSeconds));
    }

    double speed(double timeSeconds) {
        return speeds[index(timeSeconds)];
    }

    Foot leftFoot(double timeSeconds) {
        return foot(left, timeSeconds);
    }

    Foot rightFoot(double timeSeconds) {
        return foot(right, timeSeconds);
    }

    private Foot foot(Foot[] feet, double timeSeconds) {
        int i = index(timeSeconds);
        return feet[i].towards(feet[Math.min(i + 1, feet.length - 1)], share(timeSeconds));
    }

    private Style[] smoothStyles() {
        int reach = (int) Math.round(BLEND_SECONDS * RATE);
        Style[] out = new Style[states.size()];
        for (int i = 0; i < out.length; i++) {
            Style sum = Style.none();
            double total = 0;
            for (int k = -reach; k <= reach; k++) {
                PersonState s = states.get(Math.max(0, Math.min(out.length - 1, i + k)));
                double weight = reach + 1.0 - Math.abs(k);
                sum = sum.plus(weight, styleOf(s));
                total += weight;
            }
            out[i] = Style.none().plus(1 / total, sum);
        }
        return out;
    }

    private static Style styleOf(PersonState s) {
        Style full = Style.of(s.action());
        double phase = s.actionPhase();
        return switch (s.action()) {
            case PASS -> Style.of(Action.HOLD).towards(full, smooth(phase));
            case CATCH -> full.towards(Style.of(Action.HOLD), smooth(phase));
            case SHOOT -> shot(phase, full);
            default -> full;
        };
    }

    private static Style shot(double phase, Style full) {
        Style hold = Style.of(Action.HOLD);
        Style dip = new Style(0.085, hold.stance(), 0.18, 0, 0.40, -0.18, -0.35);
        return phase < 0.3 ? hold.towards(dip, smooth(phase / 0.3)) : dip.towards(full, smooth((phase - 0.3) / 0.4));
    }

    static double smooth(double t) {
        double c = Math.max(0, Math.min(1, t));
        return c * c * (3 - 2 * c);
    }

    private double[] smoothSpeeds() {
        int reach = (int) Math.round(0.1 * RATE);
        double[] out = new double[states.size()];
        for (int i = 0; i < out.length; i++) {
            double sum = 0;
            for (int k = -reach; k <= reach; k++) {
                sum += states.get(Math.max(0, Math.min(out.length - 1, i + k))).speedMetresPerSecond();
            }
            out[i] = sum / (2 * reach + 1);
        }
        return out;
    }

    private double swingShare(int i) {
        double forward = Gait.swingShare(speeds[i]);
        double sideways = Math.min(SLIDING_SWING_SHARE, forward);
        return sideways + forwardShare(states.get(i)) * (forward - sideways);
    }

    private boolean swings(int i, double offset) {
        if (speeds[i] < WALKING) {
            return false;
        }
        double turn = (states.get(i).gaitPhaseRadians() - offset) / (2 * Math.PI);
        return turn - Math.floor(turn) < swingShare(i);
    }

    private Foot[] feet(double offset, int side) {
        int n = states.size();
        Foot[] out = new Foot[n];
        Foot planted = target(0, 0, side);
        int i = 0;
        while (i < n) {
            if (airborne(i)) {
                int from = i;
                while (i < n && airborne(i)) {
                    out[i] = inAir(planted, from, i);
                    i++;
                }
                planted = onFloor(out[i - 1]);
            } else if (swings(i, offset)) {
                int end = swingEnd(i, offset);
                planted = swing(out, planted, i, end, landing(end, offset, side));
                i = end;
            } else if (mustCorrect(i, planted, side)) {
                int end = Math.min(n, i + (int) (CORRECTION_SECONDS * RATE));
                planted = swing(out, planted, i, end, target(Math.min(n - 1, end), 0, side));
                i = end;
            } else {
                out[i] = planted;
                i++;
            }
        }
        return out;
    }

    private boolean airborne(int i) {
        return states.get(i).jumpMetres() > AIRBORNE_METRES;
    }

    private Foot inAir(Foot takeOff, int from, int i) {
        PersonState a = states.get(Math.max(0, from - 1));
        PersonState b = states.get(i);
        double pitch = Math.min(0.9, b.jumpMetres() * 5);
        return new Foot(
                takeOff.x() + b.position().xMetres() - a.position().xMetres(),
                takeOff.y() + b.position().yMetres() - a.position().yMetres(),
                b.jumpMetres(),
                takeOff.yaw(),
                pitch);
    }

    private static Foot onFloor(Foot f) {
        return new Foot(f.x(), f.y(), 0, f.yaw(), 0);
    }

    private int swingEnd(int from, double offset) {
        int limit = Math.min(states.size(), from + (int) (0.7 * RATE));
        int i = from + 1;
        while (i < limit && swings(i, offset) && !airborne(i)) {
            i++;
        }
        return Math.max(i, Math.min(states.size(), from + RATE / 10));
    }

    /** Where to set the foot down: where the body will be when it passes over it in the stance that follows. */
    private Foot landing(int end, double offset, int side) {
        int limit = Math.min(states.size() - 1, end + (int) (0.6 * RATE));
        int down = Math.min(states.size() - 1, end);
        int i = down;
        while (i < limit && !swings(i, offset) && speeds[i] >= WALKING) {
            i++;
        }
        boolean stops = speeds[i] < WALKING;
        return target(stops ? i : down + (int) (OVER_THE_FOOT * (i - down)), speeds[down], side);
    }

    private Foot target(int i, double speed, int side) {
        PersonState s = states.get(i);
        double straight = speed < WALKING ? 0 : forwardShare(s);
        double wide = styles[i].stance() * proportions.height() / 2;
        double half = wide + straight * smooth((speed - 0.5) / 3) * (0.045 - wide);
        double toes = side * (0.20 - 0.15 * smooth(speed / 3));
        double f = s.facingRadians();
        double back = (s.action() == Action.SIT ? -0.20 : 0.02) * proportions.height();
        return new Foot(
                s.position().xMetres() - Math.sin(f) * side * half - Math.cos(f) * back,
                s.position().yMetres() + Math.cos(f) * side * half - Math.sin(f) * back,
                0,
                f + toes,
                0);
    }

    private static double forwardShare(PersonState s) {
        double along = s.velocityXMetresPerSecond() * Math.cos(s.facingRadians())
                + s.velocityYMetresPerSecond() * Math.sin(s.facingRadians());
        return Math.min(1, Math.abs(along) / Math.max(0.1, s.speedMetresPerSecond()));
    }

    private boolean mustCorrect(int i, Foot planted, int side) {
        if (speeds[i] >= WALKING) {
            return false;
        }
        boolean myTurn = (i / (int) (CORRECTION_SECONDS * RATE)) % 2 == (side > 0 ? 0 : 1);
        Foot wanted = target(i, 0, side);
        double off = Math.hypot(wanted.x() - planted.x(), wanted.y() - planted.y());
        double turn = Math.abs(Math.IEEEremainder(wanted.yaw() - planted.yaw(), 2 * Math.PI));
        return myTurn && (off > CORRECTION_METRES || turn > 0.5);
    }

    /**
     * A foot's way through the air: it leaves the floor heel first, rises at once, and is let down softly, so that the
     * leading foot of a runner is low through all of the flight.
     */
    private Foot swing(Foot[] out, Foot from, int start, int end, Foot to) {
        int first = Math.min(start, speeds.length - 1);
        double speed = speeds[first];
        double distance = Math.hypot(to.x() - from.x(), to.y() - from.y());
        double run = forwardShare(states.get(first)) * (0.02 * distance + 0.045 * Math.max(0, speed - 1));
        double height = Math.min(0.32, 0.02 + 0.03 * distance + run);
        for (int i = start; i < end; i++) {
            double u = (i - start + 1.0) / (end - start + 1.0);
            Foot flat = from.towards(to, smooth(u));
            double lift = height * 6.75 * u * (1 - u) * (1 - u);
            double pitch = Math.min(1.0, 0.3 + 0.2 * speed) * smooth(u / 0.15) * smooth((0.9 - u) / 0.55);
            out[i] = new Foot(flat.x(), flat.y(), lift, flat.yaw(), pitch);
        }
        return to;
    }
}
