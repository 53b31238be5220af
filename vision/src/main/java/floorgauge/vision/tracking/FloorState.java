package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;

/**
 * Position and velocity on the floor with their joint covariance.
 *
 * @param mean x, y in metres and their rates in m/s, court frame
 * @param covariance 4x4 in the same order, symmetric
 */
record FloorState(double[] mean, double[][] covariance) {

    static final int SIZE = 4;

    FloorState {
        if (mean.length != SIZE || covariance.length != SIZE) {
            throw new IllegalArgumentException("a floor state has four components, not " + mean.length);
        }
    }

    FloorPoint position() {
        return new FloorPoint(mean[0], mean[1]);
    }

    double speedMetresPerSecond() {
        return Math.hypot(mean[2], mean[3]);
    }

    FloorEstimate positionEstimate() {
        double xx = covariance[0][0];
        double yy = covariance[1][1];
        double limit = Math.sqrt(xx * yy);
        return new FloorEstimate(
                position(), new FloorCovariance(xx, Math.max(-limit, Math.min(limit, covariance[0][1])), yy));
    }
}
