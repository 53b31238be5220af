package floorgauge.sampleclips.movement;

import floorgauge.court.floor.FloorPoint;

/**
 * A position, displacement or velocity on the floor. Uses only operations that give the same bits on every machine.
 *
 * @param x along the court
 * @param y across the court
 */
public record FloorVector(double x, double y) {

    public static final FloorVector ZERO = new FloorVector(0, 0);

    public static FloorVector of(FloorPoint point) {
        return new FloorVector(point.xMetres(), point.yMetres());
    }

    /** Length 1 in this direction. */
    public static FloorVector direction(double radians) {
        return new FloorVector(StrictMath.cos(radians), StrictMath.sin(radians));
    }

    public FloorPoint toPoint() {
        return new FloorPoint(x, y);
    }

    public FloorVector plus(FloorVector other) {
        return new FloorVector(x + other.x, y + other.y);
    }

    public FloorVector minus(FloorVector other) {
        return new FloorVector(x - other.x, y - other.y);
    }

    public FloorVector times(double factor) {
        return new FloorVector(x * factor, y * factor);
    }

    public double dot(FloorVector other) {
        return x * other.x + y * other.y;
    }

    /** Above 0 where {@code other} lies counter-clockwise of this. */
    public double cross(FloorVector other) {
        return x * other.y - y * other.x;
    }

    public double length() {
        return Math.sqrt(x * x + y * y);
    }

    public double distanceTo(FloorVector other) {
        return minus(other).length();
    }

    /** Length 1 in the same direction; the zero vector stays zero. */
    public FloorVector unit() {
        double length = length();
        return length > 0 ? times(1 / length) : ZERO;
    }

    /** Turned by a quarter turn counter-clockwise. */
    public FloorVector left() {
        return new FloorVector(-y, x);
    }

    /** Turned counter-clockwise. */
    public FloorVector turned(double radians) {
        double c = StrictMath.cos(radians);
        double s = StrictMath.sin(radians);
        return new FloorVector(c * x - s * y, s * x + c * y);
    }

    /** The same direction, at most this long. */
    public FloorVector atMost(double length) {
        double own = length();
        return own > length ? times(length / own) : this;
    }

    /** From the x axis towards y, in -pi to pi. */
    public double radians() {
        return StrictMath.atan2(y, x);
    }
}
