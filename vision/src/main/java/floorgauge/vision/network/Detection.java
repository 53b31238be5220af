package floorgauge.vision.network;

import floorgauge.court.track.ImageBox;
import java.util.Objects;

/**
 * A person that the detector found.
 *
 * @param box in pixels of the picture given; may reach a little beyond it
 * @param score the network's own confidence, 0 to 1; not a calibrated probability
 */
public record Detection(ImageBox box, double score) {

    public Detection {
        Objects.requireNonNull(box, "box");
        if (!(score >= 0 && score <= 1)) {
            throw new IllegalArgumentException("score must lie in 0 to 1: " + score);
        }
    }
}
