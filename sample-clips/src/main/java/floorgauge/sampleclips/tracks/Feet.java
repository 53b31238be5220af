package floorgauge.sampleclips.tracks;

import floorgauge.court.floor.FloorPoint;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.PersonState;

/**
 * Where the feet are, from the state of a body without its skeleton.
 *
 * <p>Through half a gait cycle one foot stays where it is on the floor while the body passes over it, and the other swings;
 * their midpoint stays under the body. Above a run's speed, both are off the floor in the last part of each half cycle.
 *
 * @param left floor contact of the left foot
 * @param right floor contact of the right foot
 * @param overShoulders distance of the feet across the body over shoulder width
 * @param planted whether a foot is on the floor and at rest
 */
public record Feet(FloorPoint left, FloorPoint right, double overShoulders, boolean planted) {

    /** Distance of the shoulder joints over height: about a fifth (from memory). */
    private static final double SHOULDERS_OVER_HEIGHT = 0.21;

    private static final double WALK_TO_RUN_METRES_PER_SECOND = 2.2;
    private static final double FLIGHT_SHARE = 0.3;

    /** @param strideMetres way of the body in a gait cycle */
    public static Feet of(PersonState state, double strideMetres) {
        double across = overShoulders(state.action(), state.speedMetresPerSecond());
        double half = across * SHOULDERS_OVER_HEIGHT * state.person().heightMetres() / 2;
        FloorVector body = FloorVector.of(state.position());
        FloorVector toLeft = FloorVector.direction(state.facingRadians()).left().times(half);
        FloorVector way = new FloorVector(state.velocityXMetresPerSecond(), state.velocityYMetresPerSecond()).unit();
        double cycle = state.gaitPhaseRadians() / Math.PI;
        double into = cycle - Math.floor(cycle);
        double reach = strideMetres / 4 * (1 - 2 * into);
        boolean leftStands = Math.floor(cycle) % 2 == 0;
        FloorVector ahead = way.times(leftStands ? reach : -reach);
        boolean runs = state.speedMetresPerSecond() > WALK_TO_RUN_METRES_PER_SECOND;
        boolean planted = state.jumpMetres() <= 0 && !(runs && into > 1 - FLIGHT_SHARE);
        return new Feet(
                body.plus(toLeft).plus(ahead).toPoint(),
                body.minus(toLeft).minus(ahead).toPoint(),
                across,
                planted);
    }

    /** Common practice: a defender and a screener stand wider than their shoulders. */
    private static double overShoulders(Action action, double speed) {
        double standing = switch (action) {
            case SCREEN -> 1.55;
            case DEFEND -> 1.5;
            case READY, HOLD, DRIBBLE, CATCH, PASS, HAND_OFF -> 1.15;
            case SHOOT, MOVE, SIT -> 0.9;
        };
        double share = Math.min(1, speed / WALK_TO_RUN_METRES_PER_SECOND);
        return standing + share * (0.6 - standing);
    }
}
