package floorgauge.court.track;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a person looks like through a film, for telling again who it is. An empty part was not seen, which differs from any
 * value.
 *
 * @param jersey the number that was read; empty where none was
 * @param shirtRgb mean colour of the shirt as 0xRRGGBB of sRGB; empty where no shirt was seen
 */
public record Appearance(Optional<JerseyReading> jersey, OptionalInt shirtRgb) {

    /** Nothing was seen. */
    public static final Appearance UNSEEN = new Appearance(Optional.empty(), OptionalInt.empty());

    private static final int MOST_RGB = 0xFFFFFF;

    public Appearance {
        Objects.requireNonNull(jersey, "jersey");
        if (shirtRgb.isPresent() && (shirtRgb.getAsInt() < 0 || shirtRgb.getAsInt() > MOST_RGB)) {
            throw new IllegalArgumentException("a colour has three bytes: " + shirtRgb.getAsInt());
        }
    }
}
