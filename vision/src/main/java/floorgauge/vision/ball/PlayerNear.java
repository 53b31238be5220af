package floorgauge.vision.ball;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.PixelPoint;
import java.util.List;
import java.util.Objects;

/**
 * A player at one instant, as the ball needs them.
 *
 * @param id of the track
 * @param foot on the floor, court frame
 * @param wrists in the picture; empty where they were not seen
 */
record PlayerNear(int id, FloorEstimate foot, List<PixelPoint> wrists) {

    PlayerNear {
        Objects.requireNonNull(foot, "foot");
        wrists = List.copyOf(wrists);
    }
}
