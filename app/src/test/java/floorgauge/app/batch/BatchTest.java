package floorgauge.app.batch;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BatchTest {

    @TempDir
    private Path folder;

    private final List<String> told = new ArrayList<>();

    @Test
    void noFilmIsABatchToo() {
        assertThat(run(List.of())).isEqualTo(new Batch.Outcome(0, 0));
        assertThat(told).containsExactly("begin 0 films 0.0 s");
    }

    @Test
    void aFilmThatFailsIsReportedAndTheRestGoesOn() throws IOException {
        List<Path> films = List.of(film("bad", "mend"), film("good", "fine"), film("odd", "bug"), film("last", "fine"));
        assertThat(run(films)).isEqualTo(new Batch.Outcome(1, 1));
        assertThat(told)
                .containsExactly(
                        "begin 4 films 400.0 s",
                        "film 1 bad",
                        "failed bad: bad holds no court",
                        "film 2 good",
                        "measured good",
                        "film 3 odd",
                        "broke odd: a bug",
                        "film 4 last",
                        "measured last");
        assertThat(folder.resolve("out/good/findings.json")).exists();
        assertThat(folder.resolve("out/bad")).doesNotExist();
    }

    @Test
    void aSecondRunSkipsWhatIsDoneAndTriesAgainWhatIsNot() throws IOException {
        List<Path> films = List.of(film("good", "fine"), film("bad", "mend"));
        run(films);
        told.clear();
        run(films);
        assertThat(told)
                .containsExactly(
                        "done before good", "begin 1 films 100.0 s", "film 1 bad", "failed bad: bad holds no court");
    }

    @Test
    void aFilmThatChangedIsMeasuredAgain() throws IOException {
        Path film = film("good", "fine");
        run(List.of(film));
        Files.writeString(film, "fine too");
        told.clear();
        run(List.of(film));
        assertThat(told).contains("measured good");
    }

    private Path film(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name + ".mp4"), text);
    }

    private Batch.Outcome run(List<Path> films) {
        try (ResultsFolder results = ResultsFolder.open(folder.resolve("out"))) {
            return new Batch(new Scripted(), results, new Told()).run(films);
        }
    }

    private static String name(Path film) {
        return film.getFileName().toString().replace(".mp4", "");
    }

    /** Does what the film's text says. */
    private static final class Scripted implements FilmMeasurer {

        private final RunSettings settings = RunSettings.of(Map.of());

        @Override
        public RunSettings settingsFor(Path film) {
            return settings;
        }

        @Override
        public String digest(Path film) {
            return Digest.ofText(text(film));
        }

        @Override
        public double durationSeconds(Path film) {
            return 100;
        }

        @Override
        public ResultsFolder.Contents measure(Path film, String sha256, Progress progress, Warnings warnings) {
            if (text(film).equals("mend")) {
                throw new MendableException(name(film) + " holds no court");
            }
            if (text(film).equals("bug")) {
                throw new IllegalStateException("a bug");
            }
            MeasuredFilm invented = InventedFilm.measured();
            MeasuredFilm measured = new MeasuredFilm(
                    new FilmSource(name(film), sha256, 640, 360, 4, 100),
                    settings,
                    invented.court(),
                    invented.tracks(),
                    invented.findings());
            return place -> FindingsJson.write(measured, place.resolve("findings.json"));
        }

        private static String text(Path film) {
            try {
                return Files.readString(film);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private final class Told implements BatchReport {

        @Override
        public void begin(int films, double filmSeconds) {
            told.add("begin " + films + " films " + filmSeconds + " s");
        }

        @Override
        public void film(int number, Path film) {
            told.add("film " + number + " " + name(film));
        }

        @Override
        public void reached(double filmSeconds) {
            assertThat(filmSeconds).isBetween(0.0, 400.0);
        }

        @Override
        public void warned(Path film, String line) {
            told.add("warned " + name(film) + ": " + line);
        }

        @Override
        public void measured(Path film, Path results) {
            told.add("measured " + name(film));
        }

        @Override
        public void doneBefore(Path film, Path results) {
            told.add("done before " + name(film));
        }

        @Override
        public void failed(Path film, String line) {
            told.add("failed " + name(film) + ": " + line);
        }

        @Override
        public void broke(Path film, RuntimeException bug) {
            told.add("broke " + name(film) + ": " + bug.getMessage());
        }

        @Override
        public void close() {}
    }
}
