package floorgauge.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import floorgauge.court.calibration.OpenCv;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

/** One clear line and exit code 2 for what the user can mend, and nothing half-written. */
class BadInputTest {

    private static final Path ROOT = Path.of(System.getProperty("floorgauge.root"));

    @TempDir
    private Path folder;

    @BeforeAll
    static void load() {
        OpenCv.load();
    }

    @Test
    void noSuchFile() throws IOException {
        refused("no such file or folder", measure(folder.resolve("none.mp4")));
    }

    @Test
    void anEmptyFolder() throws IOException {
        refused("no film in", measure(Files.createDirectory(folder.resolve("empty"))));
    }

    @Test
    void anEmptyFile() throws IOException {
        refused("a.mp4", measure(Files.createFile(folder.resolve("a.mp4"))));
    }

    @Test
    void notAFilm() throws IOException {
        Path file =
                Files.writeString(folder.resolve("notes.mp4"), "Tuesday: closeouts, then shell drill.\n".repeat(500));
        refused("notes.mp4", measure(file));
    }

    @Test
    void randomBytesUnderAnOddName() throws IOException {
        byte[] bytes = new byte[20_000];
        new Random(7).nextBytes(bytes);
        Path file = Files.write(folder.resolve("- ö 'x' \"y\" $(z).mov"), bytes);
        refused("$(z).mov", measure(file));
    }

    @Test
    void aLineBreakInANameDoesNotBreakTheLine() throws IOException {
        refused("a b.mp4", measure(folder.resolve("a\nb.mp4")));
    }

    @Test
    void noCourtInSight() throws IOException {
        refused("no court found", measure(plainFilm()));
    }

    @Test
    void aCourtThatNoOneIsOn() throws IOException {
        Path points = Files.writeString(folder.resolve("plain.points.yaml"), """
                picture: {width: 320, height: 240}
                rules: fiba
                points:
                  - {metres: [14, 7.5], pixel: [40, 60]}
                  - {metres: [14, -7.5], pixel: [280, 60]}
                  - {metres: [5, 7.5], pixel: [5, 220]}
                  - {metres: [5, -7.5], pixel: [315, 220]}
                """);
        assertThat(points).exists();
        refused("nobody was seen", measure(plainFilm()));
    }

    @Test
    void settingsThatAreWrong() throws IOException {
        Path film = folder.resolve("any.mp4");
        Files.createFile(film);
        refused(
                "unknown rule book: street",
                CommandRun.of("measure", film.toString(), "--court", "street", "--out", out()));
        refused("no such file", CommandRun.of("measure", film.toString(), "--standards", "none.yaml", "--out", out()));
        Path standards = Files.writeString(folder.resolve("standards.yaml"), "screen:\n  contact-gap: wide\n");
        refused(
                "standards.yaml",
                CommandRun.of("measure", film.toString(), "--standards", standards.toString(), "--out", out()));
        refused("no such file", CommandRun.of("measure", film.toString(), "--points", "none.yaml", "--out", out()));
    }

    @Test
    void tracksThatAreWrong() throws IOException {
        Path text = Files.writeString(folder.resolve("a.txt"), "1,2,three\n");
        refused("--court", CommandRun.of("measure", "--tracks", text.toString(), "--out", out()));
        refused("line 1", CommandRun.of("measure", "--tracks", text.toString(), "--court", "fiba", "--out", out()));
        Path parquet = Files.writeString(folder.resolve("a.parquet"), "PAR1");
        refused(
                "a.parquet",
                CommandRun.of("measure", "--tracks", parquet.toString(), "--court", "fiba", "--out", out()));
    }

    @Test
    void anOutputThatCannotBeWrittenTo() throws IOException {
        Path file = Files.createFile(folder.resolve("file"));
        Path film = Files.createFile(folder.resolve("a.mp4"));
        CommandRun run = CommandRun.of(
                "measure", film.toString(), "--out", file.resolve("out").toString());
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err().lines()).singleElement().asString().contains("--out");
    }

    @Test
    void aReadOnlyOutput() throws IOException {
        Path out = Files.createDirectory(folder.resolve("out"));
        assumeTrue(out.toFile().setWritable(false) && !Files.isWritable(out), "skipped: this user may write anywhere");
        Path film = Files.createFile(folder.resolve("a.mp4"));
        refused("cannot write to", measure(film));
    }

    @Test
    void aFilmThatFailsDoesNotHideTheOthers() throws IOException {
        Path notes = Files.writeString(folder.resolve("notes.mp4"), "no film");
        CommandRun run = CommandRun.of(
                "measure", notes.toString(), folder.resolve("none.mp4").toString(), "--out", out());
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err().lines()).hasSize(2);
    }

    @Test
    void aFilmThatWasCutOffInItsIndexIsRefused() throws IOException {
        byte[] whole = Files.readAllBytes(ROOT.resolve("sample-clips/pin-down-sound.mp4"));
        Path cut = Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(whole, 2_000));
        refused("cut.mp4", measure(cut));
    }

    private String out() {
        return folder.resolve("out").toString();
    }

    private CommandRun measure(Path film) {
        return CommandRun.of("measure", "--out", out(), "--", film.toString());
    }

    private void refused(String words, CommandRun run) throws IOException {
        assertThat(run.exitCode()).as(run.err()).isEqualTo(2);
        assertThat(run.err().lines()).as(run.err()).hasSize(1);
        assertThat(run.err()).startsWith("floorgauge: ").contains(words);
        assertThat(run.out()).isEmpty();
        if (Files.isDirectory(folder.resolve("out"))) {
            try (Stream<Path> left = Files.list(folder.resolve("out"))) {
                assertThat(left.map(p -> p.getFileName().toString())).isSubsetOf(List.of(".floorgauge-lock"));
            }
        }
    }

    /** A second of one grey. */
    private Path plainFilm() {
        Path film = folder.resolve("plain.mp4");
        Mat grey = new Mat(240, 320, CvType.CV_8UC3, new Scalar(120, 120, 120));
        try (FilmWriter writer = FilmWriter.create(film, FilmSettings.of(320, 240, 25))) {
            for (int i = 0; i < 25; i++) {
                writer.write(grey, i * 0.04);
            }
        }
        grey.release();
        return film;
    }
}
