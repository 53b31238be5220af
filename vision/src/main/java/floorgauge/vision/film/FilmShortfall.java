package floorgauge.vision.film;

import java.util.Locale;
import java.util.Optional;

/**
 * What a film that was read to its end did not yield.
 *
 * @param missingSeconds time that the container promises and the file does not hold: a film cut off by a full card or a
 *     broken copy; 0 where the film is whole or the container promises nothing
 * @param damagedFrames pictures that could not be decoded and were left out
 */
public record FilmShortfall(double missingSeconds, long damagedFrames) {

    public FilmShortfall {
        if (!(missingSeconds >= 0) || damagedFrames < 0) {
            throw new IllegalArgumentException("must not be negative: " + missingSeconds + " s, " + damagedFrames);
        }
    }

    /** Nothing is missing. */
    public boolean isNone() {
        return missingSeconds == 0 && damagedFrames == 0;
    }

    /** One sentence for the user; empty where nothing is missing. */
    public Optional<String> sentence() {
        if (isNone()) {
            return Optional.empty();
        }
        String cut = missingSeconds > 0
                ? String.format(Locale.ROOT, "the film is cut off: its last %.1f s are missing", missingSeconds)
                : "";
        String damage = damagedFrames > 0
                ? damagedFrames + (damagedFrames == 1 ? " damaged picture was" : " damaged pictures were") + " left out"
                : "";
        return Optional.of(cut + (cut.isEmpty() || damage.isEmpty() ? "" : "; ") + damage);
    }
}
