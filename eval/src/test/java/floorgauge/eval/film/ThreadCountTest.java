package floorgauge.eval.film;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever the number of threads, a film gives the same tracks to the last digit. */
class ThreadCountTest {

    private static final double SECONDS = 0.7;

    @TempDir
    Path folder;

    @Test
    void tracksAreTheSameToTheLastDigit() throws IOException, InterruptedException {
        Path film = folder.resolve("second.mp4");
        beginning(Path.of("../sample-clips/pin-down-sound.mp4"), film);
        String one = tracks(film, 1);
        assertThat(one).matches("\\d+ tracks, [0-9a-f]{64}").doesNotStartWith("0 ");
        assertThat(tracks(film, 2)).isEqualTo(one);
        assertThat(tracks(film, 3)).isEqualTo(one);
    }

    private static void beginning(Path from, Path to) {
        try (FilmReader reader = FilmReader.open(from);
                FilmFrame frame = new FilmFrame();
                FilmWriter writer = FilmWriter.create(
                        to, FilmSettings.of(reader.info().width(), reader.info().height(), 30))) {
            while (reader.read(frame) && frame.timeSeconds() < SECONDS) {
                writer.write(frame.bgr(), frame.timeSeconds());
            }
        }
    }

    private static String tracks(Path film, int threads) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-Dai.djl.offline=true",
                "-DOPT_OUT_TRACKING=true",
                "-Dfloorgauge.models=" + System.getProperty("floorgauge.models", "../models"),
                "-cp",
                System.getProperty("java.class.path"),
                TracksOfFilm.class.getName(),
                film.toString(),
                Integer.toString(threads)));
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertThat(process.waitFor()).as(said).isZero();
        return said.lines().reduce((a, b) -> b).orElse("");
    }
}
