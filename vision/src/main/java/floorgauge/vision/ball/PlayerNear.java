package floorgauge.vision.ball;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Team;
import java.util.List;
import java.util.Objects;

/**
 * A player at one instant, as the ball needs them.
 *
 * @param id of the track
 * @param team by kit
 * @param foot on the floor, court frame
 * @param wrists in the picture; empty where they were not seen
 */
record PlayerNear(int id, Team team, FloorEstimate foot, List<PixelPoint> wrists) {

    PlayerNear {
        Objects.requireNonNull(team, "team");
        Objects.requireNonNull(foot, "foot");
        wrists = List.copyOf(wrists);
    }
}
