package floorgauge.app.result;

import java.util.Objects;

/**
 * Which film was measured.
 *
 * @param name the file's name, without its folder
 * @param sha256 of the file's bytes, 64 lower-case hexadecimal digits
 * @param widthPixels after rotation
 * @param heightPixels after rotation
 * @param durationSeconds by the film's own times
 * @param frames how many were read
 */
public record FilmSource(
        String name, String sha256, int widthPixels, int heightPixels, double durationSeconds, long frames) {

    public FilmSource {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(sha256, "sha256");
        if (widthPixels < 1 || heightPixels < 1) {
            throw new IllegalArgumentException("a film has a size: " + widthPixels + " x " + heightPixels);
        }
        if (!(durationSeconds >= 0)) {
            throw new IllegalArgumentException("a duration is at least 0 s: " + durationSeconds);
        }
        if (frames < 0) {
            throw new IllegalArgumentException("a count is at least 0: " + frames);
        }
    }
}
