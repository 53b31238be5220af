package floorgauge.court.floor;

import java.util.Objects;

/**
 * A measured position on the floor: mean and covariance in the court frame. Nothing downstream drops the covariance.
 *
 * @param mean metres, court frame
 * @param covariance square metres, court frame
 */
public record FloorEstimate(FloorPoint mean, FloorCovariance covariance) {

    public FloorEstimate {
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(covariance, "covariance");
    }

    /** This estimate turned by 180 degrees about the centre of the court. */
    public FloorEstimate turnedHalf() {
        return new FloorEstimate(mean.turnedHalf(), covariance);
    }
}
