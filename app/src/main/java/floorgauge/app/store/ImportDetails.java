package floorgauge.app.store;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a results folder does not say of its film.
 *
 * @param practiceDay when it was filmed
 * @param title what the practice is called
 * @param film where the film lies; empty where it was not found
 * @param simulated whether it was played by the program, not filmed
 * @param jerseys jersey numbers that were read, by track
 */
public record ImportDetails(
        LocalDate practiceDay, String title, Optional<Path> film, boolean simulated, Map<Integer, ReadJersey> jerseys) {

    /**
     * A jersey number read off a film.
     *
     * @param number 0 to 99
     * @param probability that it is right
     */
    public record ReadJersey(int number, double probability) {

        public ReadJersey {
            if (number < 0 || number > 99 || !(probability >= 0 && probability <= 1)) {
                throw new IllegalArgumentException(
                        "a number lies in 0 to 99, a probability in 0 to 1: " + number + ", " + probability);
            }
        }
    }

    public ImportDetails {
        Objects.requireNonNull(practiceDay, "practiceDay");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(film, "film");
        jerseys = Map.copyOf(jerseys);
    }
}
