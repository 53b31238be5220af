package floorgauge.sampleclips.scenario;

import floorgauge.court.floor.FloorPoint;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Recording;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.PersonState;
import java.util.List;
import java.util.OptionalInt;

/**
 * Where the ball is: in hands, bouncing under a hand, or in free flight (a parabola under gravity, without drag). Hands over the
 * floor follow from the state of the body alone.
 */
final class BallCourse {

    static final double GRAVITY = 9.80665;
    /** FIBA Official Basketball Rules, size 7: circumference 750 to 770 mm (from memory). */
    static final double RADIUS_METRES = 0.121;

    private static final double BLEND_SECONDS = 0.22;
    private static final double DRIBBLE_SECONDS = 0.56;
    private static final double RESTITUTION = 0.72;
    private static final double THROUGH_NET_METRES_PER_SECOND = 1.5;

    private final Recording recording;
    private final List<Control> controls;
    private final FloorVector rim;
    private final double rimHeight;

    BallCourse(Recording recording, List<Control> controls, FloorPoint rim, double rimHeight) {
        this.recording = recording;
        this.controls = List.copyOf(controls);
        this.rim = FloorVector.of(rim);
        this.rimHeight = rimHeight;
    }

    List<Control> controls() {
        return controls;
    }

    BallState at(double time) {
        int i = 0;
        while (i < controls.size() - 1 && time >= controls.get(i).toSeconds()) {
            i++;
        }
        Control control = controls.get(i);
        Point p = switch (control.kind()) {
            case HELD, DRIBBLED -> controlled(i, time);
            case PASS -> pass(control, time);
            case SHOT -> shot(control, time);
            case LOOSE -> loose(control, time);
        };
        OptionalInt by = control.controlled() ? OptionalInt.of(control.from()) : OptionalInt.empty();
        return new BallState(p.floor().x(), p.floor().y(), p.height(), by);
    }

    /** The time of flight of a shot, from release to the rim. */
    static double shotSeconds(double distance, double releaseHeight, double rimHeight) {
        double up = riseSpeed(distance, releaseHeight, rimHeight);
        return (up + Math.sqrt(up * up - 2 * GRAVITY * (rimHeight - releaseHeight))) / GRAVITY;
    }

    /** The apex lies half a metre and a tenth of the distance above the rim. */
    private static double riseSpeed(double distance, double releaseHeight, double rimHeight) {
        double apex = Math.max(releaseHeight + 0.1, rimHeight + 0.5 + 0.1 * distance);
        return Math.sqrt(2 * GRAVITY * (apex - releaseHeight));
    }

    /** Height at which a shot leaves the hands. */
    static double shotHeight(PersonState shooter) {
        return shooter.person().heightMetres() * 1.2 + shooter.jumpMetres();
    }

    private record Point(FloorVector floor, double height) {

        Point towards(Point other, double share) {
            return new Point(
                    floor.plus(other.floor.minus(floor).times(share)), height + share * (other.height - height));
        }
    }

    private PersonState person(int id, double time) {
        return recording.at(Math.min(time, recording.durationSeconds())).stream()
                .filter(s -> s.person().id() == id)
                .findFirst()
                .orElseThrow();
    }

    private static Point reach(PersonState state, double forward, double left, double heightShare) {
        FloorVector front = FloorVector.direction(state.facingRadians());
        FloorVector place = FloorVector.of(state.position())
                .plus(front.times(forward))
                .plus(front.left().times(left));
        return new Point(place, state.person().heightMetres() * heightShare + state.jumpMetres());
    }

    private static Point chest(PersonState state) {
        return reach(state, 0.34, 0, 0.64);
    }

    private static Point stretched(PersonState state) {
        return reach(state, 0.58, 0, 0.7);
    }

    /** In hands or under them, eased from where the span before left it and to where the next takes it. */
    private Point controlled(int i, double time) {
        Control control = controls.get(i);
        PersonState state = person(control.from(), time);
        Point own = control.kind() == Control.Kind.HELD ? chest(state) : dribbled(state, time - control.fromSeconds());
        double since = time - control.fromSeconds();
        if (i > 0 && since < BLEND_SECONDS) {
            own = before(i, state, time).towards(own, eased(since / BLEND_SECONDS));
        }
        double left = control.toSeconds() - time;
        if (i < controls.size() - 1 && left < BLEND_SECONDS) {
            own = own.towards(after(i, state, time), eased(1 - left / BLEND_SECONDS));
        }
        return own;
    }

    private Point before(int i, PersonState state, double time) {
        Control previous = controls.get(i - 1);
        if (!previous.controlled()) {
            return stretched(state);
        }
        return chest(person(previous.from(), time));
    }

    private Point after(int i, PersonState state, double time) {
        Control next = controls.get(i + 1);
        return switch (next.kind()) {
            case PASS -> stretched(state);
            case SHOT -> release(state);
            default -> chest(state);
        };
    }

    private static Point release(PersonState shooter) {
        Point hands = reach(shooter, 0.25, 0, 1);
        return new Point(hands.floor(), shotHeight(shooter));
    }

    private static double eased(double share) {
        double s = Math.max(0, Math.min(1, share));
        return s * s * (3 - 2 * s);
    }

    /** Pushed down, up again: each half is free flight that starts or ends with the hand. */
    private static Point dribbled(PersonState state, double since) {
        Point hand = reach(state, 0.35, -0.3, 0.5);
        double half = DRIBBLE_SECONDS / 2;
        double into = since % DRIBBLE_SECONDS;
        double fall = into < half ? into : DRIBBLE_SECONDS - into;
        double push = (hand.height() - RADIUS_METRES) / half - GRAVITY * half / 2;
        return new Point(hand.floor(), hand.height() - push * fall - GRAVITY * fall * fall / 2);
    }

    private Point pass(Control control, double time) {
        Point from = stretched(person(control.from(), control.fromSeconds()));
        Point to = stretched(person(control.to().orElseThrow(), control.toSeconds()));
        return flight(from, to, control.toSeconds() - control.fromSeconds(), time - control.fromSeconds());
    }

    private static Point flight(Point from, Point to, double whole, double since) {
        double up = (to.height() - from.height()) / whole + GRAVITY * whole / 2;
        FloorVector floor = from.floor().plus(to.floor().minus(from.floor()).times(since / whole));
        return new Point(floor, from.height() + up * since - GRAVITY * since * since / 2);
    }

    private Point shot(Control control, double time) {
        Point from = release(person(control.from(), control.fromSeconds()));
        double whole = control.toSeconds() - control.fromSeconds();
        return flight(from, new Point(rim, rimHeight), whole, time - control.fromSeconds());
    }

    /** Falls through the net and bounces on the spot. */
    private Point loose(Control control, double time) {
        double height = rimHeight;
        double speed = -THROUGH_NET_METRES_PER_SECOND;
        double left = time - control.fromSeconds();
        while (true) {
            double drop = height - RADIUS_METRES;
            double landing = (speed + Math.sqrt(speed * speed + 2 * GRAVITY * drop)) / GRAVITY;
            if (left < landing || landing < 1e-3) {
                return new Point(rim, Math.max(RADIUS_METRES, height + speed * left - GRAVITY * left * left / 2));
            }
            left -= landing;
            speed = RESTITUTION * (GRAVITY * landing - speed);
            height = RADIUS_METRES;
            if (speed < 0.2) {
                return new Point(rim, RADIUS_METRES);
            }
        }
    }
}
