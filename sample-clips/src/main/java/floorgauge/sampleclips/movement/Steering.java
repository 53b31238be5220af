package floorgauge.sampleclips.movement;

import java.util.List;

/** From a wish (be there, at this pace) to a wished velocity that goes round the bodies in the way. */
public final class Steering {

    private static final double BRAKING_METRES_PER_SECOND_SQUARED = 3;
    private static final double SETTLING_SECONDS = 0.25;
    private static final double CLEARANCE_METRES = 2 * HumanLimits.BODY_RADIUS_METRES + 0.08;

    private Steering() {}

    /**
     * The velocity that brings a body to a target and to rest relative to it.
     *
     * @param target where to
     * @param targetVelocity of the target itself
     * @param pace largest speed
     */
    public static FloorVector arrive(Mover mover, FloorVector target, FloorVector targetVelocity, double pace) {
        FloorVector left = target.minus(mover.position());
        double distance = left.length();
        double speed =
                Math.min(Math.sqrt(2 * BRAKING_METRES_PER_SECOND_SQUARED * distance), distance / SETTLING_SECONDS);
        return left.unit().times(Math.min(pace, speed)).plus(targetVelocity).atMost(pace);
    }

    /** The velocity that passes through a point without slowing down for it. */
    public static FloorVector pass(Mover mover, FloorVector point, double pace) {
        return point.minus(mover.position()).unit().times(pace);
    }

    /**
     * Bends a wished velocity round the nearest body in its way.
     *
     * @param others bodies to go round
     * @param lookaheadMetres how far ahead bodies are minded
     * @param side above 0 passes with the obstacle on the right hand, below 0 on the left, 0 the shorter way
     */
    public static FloorVector around(
            Mover mover, FloorVector wished, List<Mover> others, double lookaheadMetres, double side) {
        return around(mover, wished, others, lookaheadMetres, side, CLEARANCE_METRES);
    }

    /** @param clearanceMetres how far from the centres of bodies the way keeps; the rest as above */
    public static FloorVector around(
            Mover mover,
            FloorVector wished,
            List<Mover> others,
            double lookaheadMetres,
            double side,
            double clearanceMetres) {
        double speed = wished.length();
        if (speed < 1e-9) {
            return wished;
        }
        FloorVector direction = wished.unit();
        Mover nearest = null;
        double nearestDistance = lookaheadMetres;
        for (Mover other : others) {
            FloorVector to = other.position().minus(mover.position());
            double distance = to.length();
            boolean ahead = direction.dot(to) > 0;
            boolean inTheWay = Math.abs(direction.cross(to)) < clearanceMetres;
            boolean leaving = other.velocity().dot(direction) > speed;
            if (other != mover && ahead && inTheWay && !leaving && distance < nearestDistance) {
                nearest = other;
                nearestDistance = distance;
            }
        }
        if (nearest == null) {
            return wished;
        }
        FloorVector to = nearest.position().minus(mover.position());
        double turn = side != 0 ? Math.signum(side) : (direction.cross(to) <= 0 ? 1 : -1);
        double half = StrictMath.asin(Math.min(1, clearanceMetres / nearestDistance));
        return to.unit().turned(turn * half).times(speed);
    }
}
