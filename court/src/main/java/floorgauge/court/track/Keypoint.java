package floorgauge.court.track;

import floorgauge.court.floor.PixelPoint;
import java.util.Objects;

/**
 * One joint in the picture.
 *
 * @param position pixels of the film as stored
 * @param score the network's own confidence, 0 to 1; not a calibrated probability
 */
public record Keypoint(PixelPoint position, double score) {

    public Keypoint {
        Objects.requireNonNull(position, "position");
        if (!(score >= 0 && score <= 1)) {
            throw new IllegalArgumentException("score must lie in 0 to 1: " + score);
        }
    }
}
