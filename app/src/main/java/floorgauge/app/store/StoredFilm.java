package floorgauge.app.store;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * A film in the store.
 *
 * @param id the first 16 digits of its SHA-256
 * @param sha256 of its bytes
 * @param name the file's name, without its folder
 * @param practiceDay when it was filmed
 * @param title what the practice is called
 * @param folder its results folder
 * @param film where the film itself lies; empty where it was not found, and for simulated ones
 * @param widthPixels 0 where there is no picture
 * @param heightPixels 0 where there is no picture
 * @param durationSeconds by the film's own times
 * @param frames how many were read
 * @param rules name of the rule set
 * @param simulated whether it was played by the program, not filmed
 */
public record StoredFilm(
        String id,
        String sha256,
        String name,
        LocalDate practiceDay,
        String title,
        Path folder,
        Optional<Path> film,
        int widthPixels,
        int heightPixels,
        double durationSeconds,
        long frames,
        String rules,
        boolean simulated) {

    private static final int ID_DIGITS = 16;

    public StoredFilm {
        Objects.requireNonNull(practiceDay, "practiceDay");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(folder, "folder");
        Objects.requireNonNull(film, "film");
    }

    /** The id of a film with these bytes. */
    public static String idOf(String sha256) {
        return sha256.substring(0, ID_DIGITS);
    }
}
