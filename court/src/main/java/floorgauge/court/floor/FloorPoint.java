package floorgauge.court.floor;

/**
 * A point on the floor in the court frame.
 *
 * @param xMetres along the length of the court, from its centre, finite
 * @param yMetres across the court, from its centre, finite
 */
public record FloorPoint(double xMetres, double yMetres) {

    public FloorPoint {
        if (!Double.isFinite(xMetres) || !Double.isFinite(yMetres)) {
            throw new IllegalArgumentException("floor point must be finite: (" + xMetres + ", " + yMetres + ")");
        }
    }

    /** Distance in metres along the floor. */
    public double distanceTo(FloorPoint other) {
        return Math.hypot(xMetres - other.xMetres, yMetres - other.yMetres);
    }

    /** This point turned by 180 degrees about the centre of the court: the other way round the attack frame. */
    public FloorPoint turnedHalf() {
        return new FloorPoint(-xMetres, -yMetres);
    }
}
