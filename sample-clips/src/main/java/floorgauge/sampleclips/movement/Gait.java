package floorgauge.sampleclips.movement;

/**
 * How fast the legs go at a speed.
 *
 * <p>A stride (two steps) is about 1.5 m long at a walk of 1.4 m/s and about 3 m at a run of 5 m/s for a person 1.8 m tall
 * (from memory); a straight line through both serves in between.
 */
public final class Gait {

    private static final double STANDING_METRES_PER_SECOND = 0.05;
    private static final double SHORTEST_STRIDE_OVER_HEIGHT = 0.51;
    private static final double STRIDE_OVER_HEIGHT_PER_SPEED = 0.232;

    private Gait() {}

    /** Way of the body in a gait cycle of two steps, in metres; 0 for one who stands. */
    public static double strideMetres(double speed, double height) {
        if (speed < STANDING_METRES_PER_SECOND) {
            return 0;
        }
        return height * (SHORTEST_STRIDE_OVER_HEIGHT + STRIDE_OVER_HEIGHT_PER_SPEED * speed);
    }

    static double stridesPerSecond(double speed, double height) {
        return speed < STANDING_METRES_PER_SECOND ? 0 : speed / strideMetres(speed, height);
    }
}
