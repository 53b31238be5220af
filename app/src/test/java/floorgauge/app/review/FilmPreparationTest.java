package floorgauge.app.review;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.InventedFilm;
import floorgauge.app.MotionJpegFilm;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.TracksParquet;
import floorgauge.app.store.Films;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The thread beside the page that makes copies of films which browsers cannot play. */
class FilmPreparationTest {

    @TempDir
    private Path folder;

    @Test
    void withoutFilmsThereIsNothingToMake() throws Exception {
        Store store = Store.open(folder.resolve("season.db"));
        List<String> problems = Collections.synchronizedList(new ArrayList<>());
        try (ReviewServer server = TestSeason.serve(store, folder)) {
            server.prepareFilms(problems::add).join();
            assertThat(problems).isEmpty();
            assertThat(folder.resolve("copies")).doesNotExist();
        }
    }

    @Test
    void aFilmIsPlayedOnceItsCopyIsThereAndTheFilmItselfStaysTheSource() throws Exception {
        Path film = motionJpeg("camera.avi");
        Store store = laid(film);
        StoredFilm stored = new Films(store).newest().orElseThrow();
        List<String> problems = Collections.synchronizedList(new ArrayList<>());
        try (ReviewServer server = TestSeason.serve(store, folder)) {
            Asker asker = new Asker(server.port());
            assertThat(asker.get("/film/" + stored.id()).statusCode()).isEqualTo(404);
            server.prepareFilms(problems::add).join();
            assertThat(problems).isEmpty();
            assertThat(asker.get("/film/" + stored.id(), "Range", "bytes=0-11").statusCode())
                    .isEqualTo(206);
            assertThat(asker.get("/film/" + stored.id(), "Range", "bytes=4-7").body())
                    .isEqualTo("ftyp");
            assertThat(new Films(store).newest().orElseThrow().film()).contains(film.toAbsolutePath());
            assertThat(asker.get("/").body()).doesNotContain("is being made");
        }
        Path copy = only(folder.resolve("copies"));
        var made = Files.getLastModifiedTime(copy);
        try (ReviewServer again = TestSeason.serve(store, folder)) {
            again.prepareFilms(problems::add).join();
            assertThat(Files.getLastModifiedTime(copy)).isEqualTo(made);
            assertThat(new Asker(again.port())
                            .get("/film/" + stored.id(), "Range", "bytes=0-0")
                            .statusCode())
                    .isEqualTo(206);
        }
    }

    @Test
    void sheetsSayWhatIsBeingMadeAndAFilmThatCannotBeReadIsOneLine() throws Exception {
        Store store = laid(motionJpeg("first.avi"));
        Path broken = Files.writeString(folder.resolve("films/broken.avi"), "no film");
        lay(store, broken);
        List<String> notices = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        ShownFilms shown = new ShownFilms(new floorgauge.app.chain.LightCopies(folder.resolve("copies")));
        new FilmPreparation(new Films(store), shown).run(notices::add, problems::add);
        assertThat(notices).hasSize(3);
        assertThat(notices.get(0)).contains("is being made, 1 of 2");
        assertThat(notices.get(1)).contains("is being made, 2 of 2");
        assertThat(notices.get(2)).isBlank();
        assertThat(problems).singleElement().satisfies(p -> assertThat(p).contains("broken.avi"));
        assertThat(only(folder.resolve("copies"))).isRegularFile();
    }

    private Store laid(Path film) throws IOException {
        Store store = Store.open(folder.resolve("season.db"));
        lay(store, film);
        return store;
    }

    private void lay(Store store, Path film) throws IOException {
        MeasuredFilm invented = InventedFilm.measured();
        FilmSource source = new FilmSource(
                film.getFileName().toString(),
                Digest.ofFile(film),
                InventedFilm.WIDTH,
                InventedFilm.HEIGHT,
                invented.film().durationSeconds(),
                invented.film().frames());
        Path results = Files.createDirectories(folder.resolve("results/" + film.getFileName()));
        TracksParquet.write(invented.tracks(), results.resolve("tracks.parquet"));
        FindingsJson.write(
                new MeasuredFilm(source, invented.settings(), invented.court(), invented.tracks(), invented.findings()),
                results.resolve("findings.json"));
        new Desk(store, List.of(folder.resolve("films"))).lay(results, problem -> {
            throw new IllegalStateException(problem);
        });
    }

    private Path motionJpeg(String name) throws IOException {
        return MotionJpegFilm.write(
                Files.createDirectories(folder.resolve("films")).resolve(name));
    }

    private static Path only(Path place) throws IOException {
        try (Stream<Path> files = Files.list(place)) {
            List<Path> all = files.toList();
            assertThat(all).hasSize(1);
            return all.get(0);
        }
    }
}
