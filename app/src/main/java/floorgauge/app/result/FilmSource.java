package floorgauge.app.result;

import java.util.Objects;

/**
 * Which film was measured.
 *
 * @param name the file's name, without its folder
 * @param sha256 of the file's bytes, 64 lower-case hexadecimal digits
 * @param widthPixels after rotation; 0 where positions came without a picture
 * @param heightPixels after rotation; 0 as above
 * @param durationSeconds by the film's own times
 * @param frames how many were read
 */
public record FilmSource(
        String name, String sha256, int widthPixels, int heightPixels, double durationSeconds, long frames) {

    public FilmSource {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(sha256, "sha256");
        if (widthPixels < 0 || heightPixels < 0 || (widthPixels == 0) != (heightPixels == 0)) {
            throw new IllegalArgumentException("a picture has a size, or none: " + widthPixels + " x " + heightPixels);
        }
        if (!(durationSeconds >= 0)) {
            throw new IllegalArgumentException("a duration is at least 0 s: " + durationSeconds);
        }
        if (frames < 0) {
            throw new IllegalArgumentException("a count is at least 0: " + frames);
        }
    }
}
