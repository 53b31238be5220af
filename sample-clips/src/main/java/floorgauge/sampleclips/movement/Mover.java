package floorgauge.sampleclips.movement;

import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import java.util.Objects;

/** One body that moves: its state at the current tick. Not safe for use by several threads. */
public final class Mover {

    private static final double TURN_RADIANS_PER_SECOND = 7;
    private static final double TURN_TIME_CONSTANT_SECONDS = 0.12;

    private final Person person;
    private FloorVector position;
    private FloorVector velocity = FloorVector.ZERO;
    private double facingRadians;
    private double gaitRadians;
    private Action action = Action.MOVE;
    private double actionPhase;
    private double jumpMetres;
    private double yielding = 1;
    private double effort = 1;

    public Mover(Person person, FloorVector position, double facingRadians) {
        this.person = Objects.requireNonNull(person, "person");
        this.position = Objects.requireNonNull(position, "position");
        this.facingRadians = facingRadians;
    }

    public Person person() {
        return person;
    }

    public FloorVector position() {
        return position;
    }

    public FloorVector velocity() {
        return velocity;
    }

    public double facingRadians() {
        return facingRadians;
    }

    /** How much this body gives way where two meet: 1 for most, near 0 for a planted one. */
    public double yielding() {
        return yielding;
    }

    public void yielding(double share) {
        yielding = share;
    }

    /** Share of the usual acceleration with which this body starts: less with a ball to dribble. */
    public double effort() {
        return effort;
    }

    public void effort(double share) {
        effort = share;
    }

    public Action action() {
        return action;
    }

    /** @param phase 0 to 1 through the action */
    public void act(Action what, double phase) {
        action = what;
        actionPhase = Math.max(0, Math.min(1, phase));
    }

    public void jump(double metres) {
        jumpMetres = Math.max(0, metres);
    }

    /** Moves on by one tick under a constant acceleration. */
    void advance(FloorVector acceleration, double seconds) {
        position = position.plus(velocity.times(seconds)).plus(acceleration.times(seconds * seconds / 2));
        velocity = velocity.plus(acceleration.times(seconds));
        gaitRadians += 2 * Math.PI * Gait.stridesPerSecond(velocity.length(), person.heightMetres()) * seconds;
    }

    /** Turns the front of the body towards a direction, no faster than a person does. */
    public void turnTowards(double radians, double seconds) {
        double left = StrictMath.IEEEremainder(radians - facingRadians, 2 * Math.PI);
        double rate = Math.max(
                -TURN_RADIANS_PER_SECOND, Math.min(TURN_RADIANS_PER_SECOND, left / TURN_TIME_CONSTANT_SECONDS));
        facingRadians = StrictMath.IEEEremainder(facingRadians + rate * seconds, 2 * Math.PI);
    }

    /** The state at this tick. */
    public PersonState state() {
        return new PersonState(
                person,
                position.toPoint(),
                velocity.x(),
                velocity.y(),
                facingRadians,
                action,
                actionPhase,
                gaitRadians,
                jumpMetres);
    }
}
