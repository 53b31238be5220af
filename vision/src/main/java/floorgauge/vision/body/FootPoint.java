package floorgauge.vision.body;

import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.track.FootSource;
import java.util.Objects;

/**
 * Where a person stands.
 *
 * @param position on the floor, court frame
 * @param source what it was measured from
 */
public record FootPoint(FloorEstimate position, FootSource source) {

    public FootPoint {
        Objects.requireNonNull(position, "position");
        Objects.requireNonNull(source, "source");
    }
}
