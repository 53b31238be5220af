package floorgauge.app.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.MeasuredFilm;
import floorgauge.app.result.RunSettings;
import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResultsFolderTest {

    private static final String SHA = Digest.ofText("one film");
    private static final String OTHER_SHA = Digest.ofText("another film");
    private static final RunSettings SETTINGS = RunSettings.of(Map.of("court", "fiba"));

    @TempDir
    private Path folder;

    @Test
    void nothingIsDoneInANewFolder() {
        try (ResultsFolder results = ResultsFolder.open(folder.resolve("new/deep"))) {
            assertThat(results.done(Path.of("a.mp4"), SHA, "key")).isEmpty();
        }
    }

    @Test
    void whatWasWrittenIsFoundByFilmAndSettings() {
        try (ResultsFolder results = ResultsFolder.open(folder)) {
            Path place = results.write(Path.of("film/a.mp4"), SHA, contents(SHA, SETTINGS));
            assertThat(place).isEqualTo(folder.resolve("a"));
            assertThat(results.done(Path.of("a.mp4"), SHA, SETTINGS.keyFor(SHA)))
                    .contains(place);
            RunSettings other = RunSettings.of(Map.of("court", "nba"));
            assertThat(results.done(Path.of("a.mp4"), SHA, other.keyFor(SHA))).isEmpty();
        }
    }

    @Test
    void anotherSettingReplacesTheResultOfTheSameFilm() throws IOException {
        try (ResultsFolder results = ResultsFolder.open(folder)) {
            results.write(Path.of("a.mp4"), SHA, place -> {
                contents(SHA, SETTINGS).writeInto(place);
                Files.createFile(place.resolve("old"));
            });
            Path place = results.write(Path.of("a.mp4"), SHA, contents(SHA, SETTINGS));
            assertThat(place.resolve("old")).doesNotExist();
            assertThat(visible()).containsExactly("a");
        }
    }

    @Test
    void twoFilmsOfOneNameGetAFolderEach() throws IOException {
        try (ResultsFolder results = ResultsFolder.open(folder)) {
            results.write(Path.of("x/a.mp4"), SHA, contents(SHA, SETTINGS));
            Path other = results.write(Path.of("y/a.mov"), OTHER_SHA, contents(OTHER_SHA, SETTINGS));
            assertThat(other).isEqualTo(folder.resolve("a-" + OTHER_SHA.substring(0, 8)));
            assertThat(results.done(Path.of("y/a.mov"), OTHER_SHA, SETTINGS.keyFor(OTHER_SHA)))
                    .contains(other);
            assertThat(results.done(Path.of("x/a.mp4"), SHA, SETTINGS.keyFor(SHA)))
                    .contains(folder.resolve("a"));
        }
    }

    @Test
    void aFolderOfSomeoneElseIsLeftAlone() throws IOException {
        Files.createDirectory(folder.resolve("a"));
        Files.createFile(folder.resolve("a/diary.txt"));
        try (ResultsFolder results = ResultsFolder.open(folder)) {
            results.write(Path.of("a.mp4"), SHA, contents(SHA, SETTINGS));
        }
        assertThat(folder.resolve("a/diary.txt")).exists();
    }

    @Test
    void aFailureWhileWritingLeavesTheEarlierResultAndNothingHalfWritten() throws IOException {
        try (ResultsFolder results = ResultsFolder.open(folder)) {
            results.write(Path.of("a.mp4"), SHA, contents(SHA, SETTINGS));
            assertThatThrownBy(() -> results.write(Path.of("a.mp4"), SHA, place -> {
                        Files.createFile(place.resolve("half"));
                        throw new IOException("disk full");
                    }))
                    .isInstanceOf(MendableException.class)
                    .hasMessageContaining("disk full");
            assertThat(results.done(Path.of("a.mp4"), SHA, SETTINGS.keyFor(SHA)))
                    .isPresent();
        }
        assertThat(everything()).containsExactly(".floorgauge-lock", "a");
    }

    @Test
    void leftoversOfAKilledRunAreCleared() throws IOException {
        Files.createDirectories(folder.resolve(".a.partial/deep"));
        Files.createFile(folder.resolve(".a.partial/deep/half"));
        Files.createDirectories(folder.resolve(".a.earlier"));
        try (ResultsFolder results = ResultsFolder.open(folder)) {
            results.write(Path.of("a.mp4"), SHA, contents(SHA, SETTINGS));
        }
        assertThat(everything()).containsExactly(".floorgauge-lock", "a");
    }

    @Test
    void oneRunAtATimeHoldsAFolder() {
        try (ResultsFolder results = ResultsFolder.open(folder)) {
            assertThat(results).isNotNull();
            assertThatThrownBy(() -> ResultsFolder.open(folder))
                    .isInstanceOf(MendableException.class)
                    .hasMessageContaining("another run");
        }
        ResultsFolder.open(folder).close();
    }

    @Test
    void aFileIsNoFolder() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));
        assertThatThrownBy(() -> ResultsFolder.open(file))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("--out");
        assertThatThrownBy(() -> ResultsFolder.open(file.resolve("below")))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("--out");
    }

    @Test
    void namesAreMadeSafe() {
        assertThat(FolderName.of(Path.of("a b.ü.mp4"))).isEqualTo("a b.ü");
        assertThat(FolderName.of(Path.of("-rf \"x\"?.mp4"))).isEqualTo("_rf _x__");
        assertThat(FolderName.of(Path.of("..mp4"))).isEqualTo("_");
        assertThat(FolderName.of(Path.of(".hidden.mp4"))).isEqualTo("_hidden");
        assertThat(FolderName.of(Path.of("x".repeat(300) + ".mp4"))).hasSize(50);
        assertThat(FolderName.of(Path.of("film"))).isEqualTo("film");
    }

    private static ResultsFolder.Contents contents(String sha, RunSettings settings) {
        MeasuredFilm film = InventedFilm.measured();
        FilmSource source = new FilmSource("a.mp4", sha, 640, 360, 1, 25);
        return place -> FindingsJson.write(
                new MeasuredFilm(source, settings, film.court(), film.tracks(), film.findings()),
                place.resolve("findings.json"));
    }

    private List<String> visible() throws IOException {
        return everything().stream().filter(n -> !n.startsWith(".")).toList();
    }

    private List<String> everything() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }
}
