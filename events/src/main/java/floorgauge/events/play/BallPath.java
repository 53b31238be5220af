package floorgauge.events.play;

import floorgauge.events.motion.MotionSample;

/** The ball through a play, in the attack frame, by index of the play's ticks. Ask {@link #seen} first. */
public final class BallPath {

    private final MotionSample[] motion;
    private final double[] height;
    private final int[] heldBy;

    BallPath(MotionSample[] motion, double[] height, int[] heldBy) {
        this.motion = motion;
        this.height = height;
        this.heldBy = heldBy;
    }

    /** Whether the ball's place at this index is known; false for an index outside the play. */
    public boolean seen(int i) {
        return i >= 0 && i < motion.length && motion[i] != null;
    }

    public double x(int i) {
        return motion[i].x();
    }

    public double y(int i) {
        return motion[i].y();
    }

    public double vx(int i) {
        return motion[i].vx();
    }

    public double vy(int i) {
        return motion[i].vy();
    }

    /** Height of the centre above the floor, metres; NaN where it is not known. */
    public double height(int i) {
        return height[i];
    }

    /** The track in whose hands it was seen; 0 where in none or not known. */
    public int heldBy(int i) {
        return heldBy[i];
    }

    /** Standard error of the position, metres. */
    public double error(int i) {
        return motion[i].position().standardErrorMetres();
    }

    /** Distance of the ball's floor projection to a player, metres. */
    public double distanceTo(PlayerPath player, int i) {
        return Math.hypot(x(i) - player.x(i), y(i) - player.y(i));
    }
}
