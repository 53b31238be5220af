package floorgauge.events.motion;

import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;

/**
 * What is known of a motion before it is seen.
 *
 * @param order 2 for constant velocity, 3 for constant acceleration
 * @param noiseDensity of the noise on the last derivative, SI
 * @param speedDeviation standard deviation of the velocity along an axis at first sight, m/s
 * @param accelerationDeviation of the acceleration, m/s2
 * @param gate standard deviations beyond which an observation is an outlier
 * @param gateSeconds outliers longer than this start the motion anew
 * @param gapSeconds a longer gap is not bridged
 * @param errorTimeSeconds errors of observations nearer than this go together
 */
public record MotionPrior(
        int order,
        double noiseDensity,
        double speedDeviation,
        double accelerationDeviation,
        double gate,
        double gateSeconds,
        double gapSeconds,
        double errorTimeSeconds) {

    /** Human limits, 9 m/s and 6 m/s2 (common practice), are taken as three and two standard deviations. */
    private static final double PLAYER_ACCELERATION_DEVIATION = 3;

    /** A pass of 9 m/s may turn within 0.1 s: 9^2 / 0.1 m2/s3. */
    private static final double BALL_DENSITY = 810;

    private static final double BALL_SPEED_DEVIATION = 5;
    private static final double BALL_GAP_SECONDS = 0.4;

    /** A player under these standards. */
    public static MotionPrior player(Standards standards) {
        return new MotionPrior(
                3,
                standards.of(Setting.MOTION_JERK_DENSITY),
                standards.of(Setting.MOTION_TOP_SPEED) / 3,
                PLAYER_ACCELERATION_DEVIATION,
                standards.of(Setting.MOTION_GATE),
                standards.of(Setting.MOTION_GATE_TIME),
                standards.of(Setting.MOTION_GAP_TIME),
                standards.of(Setting.MOTION_ERROR_TIME));
    }

    /** The ball's projection to the floor. */
    public static MotionPrior ball(Standards standards) {
        return new MotionPrior(2, BALL_DENSITY, BALL_SPEED_DEVIATION, 0, 10, BALL_GAP_SECONDS, BALL_GAP_SECONDS, 0);
    }
}
