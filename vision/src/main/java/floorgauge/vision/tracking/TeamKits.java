package floorgauge.vision.tracking;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * The colours by which the teams were told apart.
 *
 * @param first of {@link floorgauge.court.track.Team#FIRST}, 0xRRGGBB; empty where no track has it
 * @param second of {@link floorgauge.court.track.Team#SECOND}, 0xRRGGBB; empty where no track has it
 */
public record TeamKits(OptionalInt first, OptionalInt second) {

    public TeamKits {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
    }
}
