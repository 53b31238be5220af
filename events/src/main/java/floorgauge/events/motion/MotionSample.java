package floorgauge.events.motion;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;

/**
 * Where something is and how it moves at one tick of the uniform clock.
 *
 * @param tick index on {@link UniformClock}
 * @param x metres, court frame
 * @param y metres, court frame
 * @param vx metres a second
 * @param vy metres a second
 * @param position covariance of x and y, square metres
 * @param velocity covariance of vx and vy, square metres a square second
 */
public record MotionSample(
        long tick, double x, double y, double vx, double vy, FloorCovariance position, FloorCovariance velocity) {

    public FloorEstimate estimate() {
        return new FloorEstimate(new FloorPoint(x, y), position);
    }

    public double speed() {
        return Math.hypot(vx, vy);
    }

    /** The same motion seen from the court turned by 180 degrees. */
    public MotionSample turnedHalf() {
        return new MotionSample(tick, -x, -y, -vx, -vy, position, velocity);
    }
}
