package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.app.store.Films;
import floorgauge.app.store.Store;
import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeskTest {

    @TempDir
    private Path folder;

    @Test
    void aFolderThatIsNotThereIsNamed() {
        Store store = Store.open(folder.resolve("season.db"));
        assertThatThrownBy(() -> new Desk(store, List.of()).lay(folder.resolve("none"), p -> {}))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("none");
    }

    @Test
    void oneBrokenFolderDoesNotKeepTheOthersBack() throws IOException {
        Store store = Store.open(folder.resolve("season.db"));
        Path results = TestSeason.results(folder);
        Files.writeString(Files.createDirectories(results.resolve("broken")).resolve("findings.json"), "{");
        List<String> problems = new ArrayList<>();
        assertThat(new Desk(store, List.of()).lay(results, problems::add)).isEqualTo(2);
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0)).contains("broken");
        assertThat(new Films(store).all()).hasSize(1);
        assertThat(new Desk(store, List.of()).lay(results, problems::add)).isEqualTo(2);
        assertThat(new Films(store).all()).hasSize(1);
    }

    @Test
    void theDayIsReadFromTheNameElseFromTheFile() throws IOException {
        Path file = Files.writeString(folder.resolve("film.mp4"), "x");
        assertThat(Desk.day("2026-11-20 monday.mp4", file)).isEqualTo(LocalDate.of(2026, 11, 20));
        assertThat(Desk.day("practice_20260302.mp4", file)).isEqualTo(LocalDate.of(2026, 3, 2));
        Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2026-05-04T12:00:00Z")));
        assertThat(Desk.day("2026-19-39.mp4", file)).isEqualTo(LocalDate.of(2026, 5, 4));
        assertThat(Desk.day("monday.mp4", file)).isEqualTo(LocalDate.of(2026, 5, 4));
    }
}
