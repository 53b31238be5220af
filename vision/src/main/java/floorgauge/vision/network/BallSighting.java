package floorgauge.vision.network;

import floorgauge.court.floor.PixelPoint;
import java.util.Objects;

/**
 * A place in a picture that looks like a ball.
 *
 * @param centre in the picture's pixels
 * @param radiusPixels above 0
 * @param score the network's confidence, 0 to 1
 */
public record BallSighting(PixelPoint centre, double radiusPixels, double score) {

    public BallSighting {
        Objects.requireNonNull(centre, "centre");
        if (!(radiusPixels > 0 && Double.isFinite(radiusPixels))) {
            throw new IllegalArgumentException("a ball's radius is above 0: " + radiusPixels);
        }
        if (!(score >= 0 && score <= 1)) {
            throw new IllegalArgumentException("a score lies in 0 to 1: " + score);
        }
    }
}
