package floorgauge.court.track;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.PixelPoint;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The ball in one frame.
 *
 * @param frame index of the frame in presentation order, from 0
 * @param timeSeconds presentation time
 * @param floor the ball's projection straight down to the floor, court frame
 * @param heightMetres of the ball's centre above the floor; empty where it is not known
 * @param position in the picture; empty where it was inferred
 * @param heldBy track in whose hands it is; empty in flight or where it is not known
 * @param probability that the ball is there, 0 to 1
 */
public record BallObservation(
        long frame,
        double timeSeconds,
        FloorEstimate floor,
        OptionalDouble heightMetres,
        Optional<PixelPoint> position,
        OptionalInt heldBy,
        double probability) {

    public BallObservation {
        Objects.requireNonNull(floor, "floor");
        if (frame < 0) {
            throw new IllegalArgumentException("frames count from 0: " + frame);
        }
        if (!Double.isFinite(timeSeconds)) {
            throw new IllegalArgumentException("time must be finite: " + timeSeconds);
        }
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + probability);
        }
    }
}
