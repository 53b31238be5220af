package floorgauge.eval.ball;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.Objects;
import java.util.Optional;

/**
 * Where the ball truly is at one instant.
 *
 * @param timeSeconds presentation time
 * @param position in the picture; empty where the ball is out of the picture or hidden
 * @param space in space; empty where only the picture was labelled
 */
public record BallTruth(double timeSeconds, Optional<PixelPoint> position, Optional<Place> space) {

    /**
     * @param floor straight below the ball, court frame
     * @param heightMetres of its centre
     */
    public record Place(FloorPoint floor, double heightMetres) {

        public Place {
            Objects.requireNonNull(floor, "floor");
        }
    }

    public BallTruth {
        Objects.requireNonNull(position, "position");
        Objects.requireNonNull(space, "space");
        if (!Double.isFinite(timeSeconds)) {
            throw new IllegalArgumentException("time must be finite: " + timeSeconds);
        }
    }
}
