package floorgauge.app.store;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a results folder does not say of its film.
 *
 * @param practiceDay when it was filmed
 * @param title what the practice is called
 * @param film where the film lies; empty where it was not found
 * @param simulated whether it was played by the program, not filmed
 */
public record ImportDetails(LocalDate practiceDay, String title, Optional<Path> film, boolean simulated) {

    public ImportDetails {
        Objects.requireNonNull(practiceDay, "practiceDay");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(film, "film");
    }
}
