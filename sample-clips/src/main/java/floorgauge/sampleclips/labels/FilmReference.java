package floorgauge.sampleclips.labels;

import java.util.Objects;

/**
 * Which film the labels are of.
 *
 * @param file its name, without folders, for people
 * @param sha256 of its bytes, 64 lower-case hexadecimal digits: what decides
 */
public record FilmReference(String file, String sha256) {

    public FilmReference {
        Objects.requireNonNull(file, "file");
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("a SHA-256 is 64 lower-case hexadecimal digits: " + sha256);
        }
    }
}
