package floorgauge.sampleclips.render.value;

/**
 * A point or direction in the court frame, metres.
 *
 * @param x along the court
 * @param y across the court
 * @param z up
 */
public record Vec3(double x, double y, double z) {

    /** Straight up, of unit length. */
    public static final Vec3 UP = new Vec3(0, 0, 1);

    public Vec3 plus(Vec3 o) {
        return new Vec3(x + o.x, y + o.y, z + o.z);
    }

    public Vec3 minus(Vec3 o) {
        return new Vec3(x - o.x, y - o.y, z - o.z);
    }

    public Vec3 times(double f) {
        return new Vec3(x * f, y * f, z * f);
    }

    /** This and {@code f} times another. */
    public Vec3 plus(double f, Vec3 o) {
        return new Vec3(x + f * o.x, y + f * o.y, z + f * o.z);
    }

    public double dot(Vec3 o) {
        return x * o.x + y * o.y + z * o.z;
    }

    public Vec3 cross(Vec3 o) {
        return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
    }

    public double length() {
        return Math.sqrt(dot(this));
    }

    /** The same direction with length 1; up where it has no length. */
    public Vec3 unit() {
        double n = length();
        return n < 1e-12 ? UP : times(1 / n);
    }

    /** A blend: this at 0, the other at 1. */
    public Vec3 towards(Vec3 o, double share) {
        return new Vec3(x + share * (o.x - x), y + share * (o.y - y), z + share * (o.z - z));
    }

    /** Turned about a unit axis (Rodrigues' formula). */
    public Vec3 turned(Vec3 axis, double radians) {
        double c = Math.cos(radians);
        return times(c).plus(Math.sin(radians), axis.cross(this)).plus(axis.dot(this) * (1 - c), axis);
    }

    /** Of unit length, at right angles to an axis, as near to this as can be. */
    public Vec3 squaredTo(Vec3 axis) {
        return plus(-dot(axis), axis).unit();
    }
}
