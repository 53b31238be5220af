package floorgauge.events.play;

import floorgauge.events.motion.MotionSample;

/** The ball through a play. */
public final class BallPath extends FloorPath {

    private final double[] height;
    private final int[] heldBy;

    BallPath(MotionSample[] motion, double[] height, int[] heldBy) {
        super(motion);
        this.height = height;
        this.heldBy = heldBy;
    }

    /** Height of the centre above the floor, metres; NaN where it is not known. */
    public double height(int i) {
        return height[i];
    }

    /** The track in whose hands it was seen; 0 where in none or not known. */
    public int heldBy(int i) {
        return heldBy[i];
    }
}
