package floorgauge.sampleclips.labels;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Someone on the film.
 *
 * @param id from 1; the track id where tracks were labelled too
 * @param side on which side
 * @param number on the jersey; empty where it can't be read
 * @param name empty where it is not known
 */
public record LabelledPerson(int id, Side side, OptionalInt number, Optional<String> name) {

    /** What someone is on the floor for. */
    public enum Side {
        ATTACK,
        DEFENCE,
        OTHER
    }

    public LabelledPerson {
        Objects.requireNonNull(side, "side");
        Objects.requireNonNull(number, "number");
        Objects.requireNonNull(name, "name");
        if (id < 1) {
            throw new IllegalArgumentException("ids count from 1: " + id);
        }
        if (number.isPresent() && (number.getAsInt() < 0 || number.getAsInt() > 99)) {
            throw new IllegalArgumentException("a jersey number lies in 0 to 99: " + number.getAsInt());
        }
    }
}
