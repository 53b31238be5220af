package floorgauge.sampleclips.movement;

/**
 * How fast the legs go at a speed, and for how long each foot is off the floor.
 *
 * <p>A stride (two steps) is about 1.5 m long at a walk of 1.4 m/s and about 3 m at a run of 5 m/s for a person 1.8 m tall
 * (from memory); a straight line through both serves in between.
 *
 * <p>A walker's foot is on the floor for 0.62 of a stride. A runner's contact lasts about 0.26 s at 3 m/s, 0.21 s at 4 m/s,
 * 0.18 s at 5 m/s and 0.16 s at 6 m/s, so the body's way over a standing foot hardly grows with speed: 0.78 to 0.96 m; the
 * flight between two contacts lasts 0.10 to 0.13 s (after J. Nilsson and A. Thorstensson, "Ground reaction forces at
 * different speeds of human walking and running", 1989, and P. Weyand and others, "Faster top running speeds are achieved
 * with greater ground forces not more rapid leg movements", 2000; from memory).
 */
public final class Gait {

    private static final double STANDING_METRES_PER_SECOND = 0.05;
    private static final double SHORTEST_STRIDE_OVER_HEIGHT = 0.51;
    private static final double STRIDE_OVER_HEIGHT_PER_SPEED = 0.232;

    private static final double WALKING_SWING_SHARE = 0.38;
    private static final double CONTACT_OVER_HEIGHT = 0.333;
    private static final double CONTACT_OVER_HEIGHT_PER_SPEED = 0.033;

    /** Between these, in m/s, a walk turns into a run. */
    private static final double WALK = 1.7;

    private static final double RUN = 2.5;

    private Gait() {}

    /**
     * Share of a gait cycle for which a foot is off the floor, in one who moves the way he faces; beyond a half, both are
     * off the floor for as long as it is beyond a half on either side.
     */
    public static double swingShare(double speed) {
        double contact = (CONTACT_OVER_HEIGHT + CONTACT_OVER_HEIGHT_PER_SPEED * speed) / strideOverHeight(speed);
        double share = Math.max(0, Math.min(1, (speed - WALK) / (RUN - WALK)));
        return WALKING_SWING_SHARE + share * (1 - contact - WALKING_SWING_SHARE);
    }

    /** Way of the body in a gait cycle of two steps, in metres; 0 for one who stands. */
    public static double strideMetres(double speed, double height) {
        if (speed < STANDING_METRES_PER_SECOND) {
            return 0;
        }
        return height * strideOverHeight(speed);
    }

    private static double strideOverHeight(double speed) {
        return SHORTEST_STRIDE_OVER_HEIGHT + STRIDE_OVER_HEIGHT_PER_SPEED * speed;
    }

    static double stridesPerSecond(double speed, double height) {
        return speed < STANDING_METRES_PER_SECOND ? 0 : speed / strideMetres(speed, height);
    }
}
