package floorgauge.events.play;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.events.motion.MotionSample;

/**
 * The way of a player or of the ball's projection over the floor, in the attack frame (the rim under attack has x above 0), by
 * index of the play's ticks. Ask {@link #seen} before anything else at an index.
 */
public abstract sealed class FloorPath permits PlayerPath, BallPath {

    private final MotionSample[] motion;

    /** @param motion a sample an index, null where it was not seen */
    FloorPath(MotionSample[] motion) {
        this.motion = motion;
    }

    /** Whether the position at this index is known; false for an index outside the play. */
    public final boolean seen(int i) {
        return i >= 0 && i < motion.length && motion[i] != null;
    }

    /** Whether every position from an index to another, both included, is known. */
    public final boolean seenThrough(int from, int to) {
        for (int i = from; i <= to; i++) {
            if (!seen(i)) {
                return false;
            }
        }
        return true;
    }

    public final double x(int i) {
        return motion[i].x();
    }

    public final double y(int i) {
        return motion[i].y();
    }

    public final double vx(int i) {
        return motion[i].vx();
    }

    public final double vy(int i) {
        return motion[i].vy();
    }

    public final double speed(int i) {
        return motion[i].speed();
    }

    /** Covariance of the position, square metres. */
    public final FloorCovariance covariance(int i) {
        return motion[i].position();
    }

    /** Covariance of the velocity, square metres a square second. */
    public final FloorCovariance velocityCovariance(int i) {
        return motion[i].velocity();
    }

    /** Distance to a place of the attack frame, metres. */
    public final double distanceTo(double px, double py, int i) {
        return Math.hypot(x(i) - px, y(i) - py);
    }

    /** Distance to another path at the same index, metres. */
    public final double distanceTo(FloorPath other, int i) {
        return distanceTo(other.x(i), other.y(i), i);
    }
}
