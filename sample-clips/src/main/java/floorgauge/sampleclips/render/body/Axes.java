package floorgauge.sampleclips.render.body;

import floorgauge.sampleclips.render.value.Vec3;

/**
 * A body part's own directions, unit vectors at right angles.
 *
 * @param front out of the chest or face
 * @param left to the person's own left
 * @param up towards the crown
 */
public record Axes(Vec3 front, Vec3 left, Vec3 up) {

    /** Upright, facing along the floor. */
    public static Axes facing(double radians) {
        Vec3 front = new Vec3(Math.cos(radians), Math.sin(radians), 0);
        return new Axes(front, new Vec3(-front.y(), front.x(), 0), Vec3.UP);
    }

    /** Bent forward about the left axis. */
    public Axes leant(double radians) {
        return new Axes(front.turned(left, radians), left, up.turned(left, radians));
    }

    /** Bent to the left about the front axis. */
    public Axes tilted(double radians) {
        return new Axes(front, left.turned(front, -radians), up.turned(front, -radians));
    }

    /** Turned to the left about the up axis. */
    public Axes twisted(double radians) {
        return new Axes(front.turned(up, radians), left.turned(up, radians), up);
    }

    /** A point given in these directions from an origin. */
    public Vec3 from(Vec3 origin, double frontMetres, double leftMetres, double upMetres) {
        return origin.plus(frontMetres, front).plus(leftMetres, left).plus(upMetres, up);
    }
}
