package floorgauge.vision.ball;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import org.hipparchus.linear.RealMatrix;

/**
 * A ball in free flight: {@code X(s) = X0 + V s + g s^2 / 2} with s the seconds since its release.
 *
 * @param startSeconds presentation time of s = 0
 * @param state x, y, z of X0 in metres, then of V in m/s, court frame
 * @param covariance of the state, 6 x 6
 * @param pixelError root of the mean squared distance between path and sightings in the picture
 */
record Flight(double startSeconds, double[] state, RealMatrix covariance, double pixelError) {

    /** Standard gravity, m/s2 (ISO 80000-3). */
    static final double GRAVITY = 9.80665;

    FloorEstimate floorAt(double timeSeconds) {
        double s = timeSeconds - startSeconds;
        return new FloorEstimate(
                new FloorPoint(state[0] + s * state[3], state[1] + s * state[4]),
                new FloorCovariance(variance(0, 0, s), variance(0, 1, s), variance(1, 1, s)));
    }

    private double variance(int i, int j, double s) {
        return covariance.getEntry(i, j)
                + s * (covariance.getEntry(i, j + 3) + covariance.getEntry(i + 3, j))
                + s * s * covariance.getEntry(i + 3, j + 3);
    }

    double heightAt(double timeSeconds) {
        double s = timeSeconds - startSeconds;
        return state[2] + s * state[5] - GRAVITY * s * s / 2;
    }
}
