package floorgauge.court.track;

/**
 * Where the front of the body points, on the floor.
 *
 * @param radians from the court frame's x axis towards y, in -pi to pi
 * @param standardErrorRadians above 0
 */
public record Facing(double radians, double standardErrorRadians) {

    public Facing {
        if (!(Math.abs(radians) <= Math.PI)) {
            throw new IllegalArgumentException("facing must lie in -pi to pi: " + radians);
        }
        if (!(standardErrorRadians > 0)) {
            throw new IllegalArgumentException("standard error must be above 0: " + standardErrorRadians);
        }
    }
}
