package floorgauge.events.finding;

import floorgauge.court.floor.FloorEstimate;
import java.util.Objects;

/**
 * A point of a {@link Trail}.
 *
 * @param timeSeconds presentation time
 * @param position smoothed, court frame
 * @param speedMetresPerSecond at least 0
 */
public record TrailPoint(double timeSeconds, FloorEstimate position, double speedMetresPerSecond) {

    public TrailPoint {
        Objects.requireNonNull(position, "position");
    }
}
