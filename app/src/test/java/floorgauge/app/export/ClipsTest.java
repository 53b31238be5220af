package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.app.InventedFilm;
import floorgauge.app.result.Digest;
import floorgauge.app.result.FilmSource;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.failure.MendableException;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.imgcodecs.Imgcodecs;

/** Clips of the invented film over plain grey, so that all that differs from grey is what was drawn. Pictures are left to be looked at. */
class ClipsTest {

    private static final Path PICTURES = Path.of("target", "clips-test");

    @TempDir
    private static Path folder;

    private static Path film;
    private static Path results;

    @BeforeAll
    static void film() throws IOException {
        OpenCv.load();
        Files.createDirectories(PICTURES);
        film = ExportedFilms.grey(folder.resolve("harbour lights 3.mp4"));
        results = ExportedFilms.results(
                folder, "harbour lights 3", film.getFileName().toString(), Digest.ofFile(film));
    }

    @Test
    void aFilmThatIsNotThereOrChangedIsSaidInOneLine() throws IOException {
        ExportOrder without = ExportedFilms.everything(results);
        assertThatThrownBy(() -> ExportKind.CLIPS.write(without, ExportFolder.open(folder.resolve("none"))))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("harbour lights 3.mp4")
                .hasMessageContaining("--films");
        try (var left = Files.list(folder.resolve("none"))) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void aFilmIsKnownByItsBytesAndInFoldersByItsNameToo() throws IOException {
        FilmSource source =
                MeasuredFolder.at(List.of(results)).get(0).findings().film();
        Path other = Files.createDirectories(folder.resolve("elsewhere"));
        Path renamed = Files.copy(film, other.resolve("renamed.mp4"));
        assertThat(new FilmSearch(List.of(other)).find(source)).isEmpty();
        assertThat(new FilmSearch(List.of(renamed)).find(source)).contains(renamed);
        assertThat(new FilmSearch(List.of(folder)).find(source)).contains(film);
        Files.writeString(other.resolve(film.getFileName()), "another film of that name");
        assertThat(new FilmSearch(List.of(other)).find(source)).isEmpty();
    }

    @Test
    void aClipShowsItsFindingWithWhatWasMeasured() throws IOException {
        ExportFolder out = ExportFolder.open(folder.resolve("clips"));
        ExportKind.CLIPS.write(order(), out);
        assertThat(out.written().stream().map(p -> p.getFileName().toString()))
                .containsExactly("harbour lights 3-001-weak-screen.mp4", "harbour lights 3-002-crowded-floor.mp4");
        try (FilmReader reader = FilmReader.open(out.written().get(0));
                FilmFrame frame = new FilmFrame()) {
            assertThat(reader.info().codec()).isEqualTo("h264");
            assertThat(reader.info().width()).isEqualTo(InventedFilm.WIDTH);
            assertThat(reader.info().height()).isEqualTo(InventedFilm.HEIGHT + 150);
            // From 0 to 6 s with the decisive moment held.
            assertThat(reader.info().durationSeconds()).isCloseTo(6 + ClipFiles.HOLD_SECONDS, within(0.1));
            reader.skipTo(3.0);
            assertThat(reader.read(frame)).isTrue();
            Imgcodecs.imwrite(PICTURES.resolve("weak-screen.png").toString(), frame.bgr());
            Mat strip = frame.bgr().submat(InventedFilm.HEIGHT + 4, InventedFilm.HEIGHT + 150, 0, InventedFilm.WIDTH);
            assertThat(Core.mean(strip).val[0]).as("paper with lettering").isBetween(200.0, 246.0);
            Mat picture = frame.bgr().submat(0, InventedFilm.HEIGHT, 0, InventedFilm.WIDTH);
            Core.MinMaxLocResult range = Core.minMaxLoc(channel(picture));
            assertThat(range.minVal).as("ink").isLessThan(60);
            assertThat(range.maxVal).as("casing").isGreaterThan(220);
        }
    }

    @Test
    void theReelHoldsAllFindingsOneAfterTheOther() throws IOException {
        ExportFolder out = ExportFolder.open(folder.resolve("reel"));
        ExportKind.REEL.write(order(), out);
        try (FilmReader reader = FilmReader.open(out.written().get(0))) {
            // 6 s and 3.6 s of film, each with its moment held.
            assertThat(reader.info().durationSeconds()).isCloseTo(9.6 + 2 * ClipFiles.HOLD_SECONDS, within(0.2));
        }
    }

    @Test
    void theSameFilmGivesTheSameBytes() throws IOException {
        ExportFolder first = ExportFolder.open(folder.resolve("first"));
        ExportFolder second = ExportFolder.open(folder.resolve("second"));
        ExportKind.CLIPS.write(order(), first);
        ExportKind.CLIPS.write(order(), second);
        assertThat(second.written().get(1))
                .hasSameBinaryContentAs(first.written().get(1));
    }

    private static Mat channel(Mat bgr) {
        Mat blue = new Mat();
        Core.extractChannel(bgr, blue, 0);
        return blue;
    }

    private static ExportOrder order() {
        return new ExportOrder(
                MeasuredFolder.at(List.of(results)).stream()
                        .map(f -> FilmChoice.of(f, (m, finding) -> true))
                        .toList(),
                new Cut.Room(2, 2),
                new FilmSearch(List.of(folder)));
    }
}
