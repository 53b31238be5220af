package floorgauge.sampleclips.truth;

import floorgauge.court.floor.PixelPoint;
import floorgauge.sampleclips.scene.BallState;
import java.util.Objects;
import java.util.Optional;

/**
 * The ball in one frame.
 *
 * @param state position and who controls it in the middle of the exposure
 * @param pixel its centre in the picture; empty behind the camera
 * @param radiusPixels its radius in the picture, 0 where it has none
 * @param visibleFraction visible pixels over the pixels it would cover, 0 to 1
 */
public record BallTruth(BallState state, Optional<PixelPoint> pixel, double radiusPixels, double visibleFraction) {

    public BallTruth {
        Objects.requireNonNull(state, "state");
        Objects.requireNonNull(pixel, "pixel");
        if (!(visibleFraction >= 0 && visibleFraction <= 1)) {
            throw new IllegalArgumentException("a fraction lies in 0 to 1: " + visibleFraction);
        }
    }
}
