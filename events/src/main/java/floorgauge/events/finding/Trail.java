package floorgauge.events.finding;

import java.util.List;
import java.util.Objects;

/**
 * A player's smoothed way through a possession.
 *
 * @param trackId who
 * @param attacking whether the player's team attacks; false for a defender
 * @param points in order of time on the uniform 25 Hz clock; gaps are left out
 */
public record Trail(int trackId, boolean attacking, List<TrailPoint> points) {

    public Trail {
        points = List.copyOf(Objects.requireNonNull(points, "points"));
    }
}
