package floorgauge.court.rules;

import floorgauge.court.floor.FloorPoint;
import java.util.Objects;

/**
 * A point of the painted court that a person can find in a picture: the middle of the paint where two lines cross, or
 * where a line is reached.
 *
 * @param name lower case with hyphens, see {@link CourtPoints}
 * @param floor court frame
 * @param meaning one sentence that says where it is
 */
public record CourtPoint(String name, FloorPoint floor, String meaning) {

    public CourtPoint {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(floor, "floor");
        Objects.requireNonNull(meaning, "meaning");
    }
}
