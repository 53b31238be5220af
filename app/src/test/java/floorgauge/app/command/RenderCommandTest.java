package floorgauge.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.calibration.OpenCv;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Films from the command line: a given camera, and what is turned away. */
class RenderCommandTest {

    /** Six metres over the side line, looking at the lane; small, so that a film is quickly drawn. */
    private static final String CAMERA = """
            width: 160
            height: 90
            K: [95, 0, 79.5, 0, 95, 44.5, 0, 0, 1]
            distortion: [-0.05, 0, 0, 0, 0]
            R: [0.984862773965, -0.173335848218, 0, -0.065714726871, -0.37337912995, -0.925348367225,
                0.160396044035, 0.911341159292, -0.379117922956]
            t: [-7.902539, 1.189844, 11.603196]
            """;

    private static final String SCENE = "isolation-sound";

    @TempDir
    private Path folder;

    private Path camera;

    @BeforeEach
    void camera() throws IOException {
        OpenCv.load();
        camera = Files.writeString(folder.resolve("camera.yaml"), CAMERA);
    }

    private JsonNode render(String frames) throws IOException {
        CommandRun run = CommandRun.of(
                "render", SCENE, "--camera", camera.toString(), "--frames", frames, "--out", folder.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        return new ObjectMapper().readTree(folder.resolve(SCENE + ".truth.json").toFile());
    }

    private List<Double> filmTimes() {
        List<Double> times = new ArrayList<>();
        try (FilmReader film = FilmReader.open(folder.resolve(SCENE + ".mp4"));
                FilmFrame frame = new FilmFrame()) {
            assertThat(film.info().width()).isEqualTo(160);
            while (film.read(frame)) {
                times.add(frame.timeSeconds());
            }
        }
        return times;
    }

    private static List<Double> truthTimes(JsonNode truth) {
        List<Double> times = new ArrayList<>();
        truth.get("frames").forEach(f -> times.add(f.get("time").doubleValue()));
        return times;
    }

    private static void assertSameTimes(List<Double> film, List<Double> truth) {
        assertThat(film).hasSameSizeAs(truth);
        for (int i = 0; i < film.size(); i++) {
            assertThat(film.get(i)).as("frame " + i).isCloseTo(truth.get(i), within(0.001));
        }
    }

    @Test
    void theTruthHoldsTheGivenCamera() throws IOException {
        JsonNode truth = render("5");
        JsonNode found = truth.get("frames").get(0).get("camera");
        assertThat(figures(found.get("K"))).containsExactly(95.0, 0.0, 79.5, 0.0, 95.0, 44.5, 0.0, 0.0, 1.0);
        assertThat(found.get("distortion").get(0).doubleValue()).isEqualTo(-0.05);
        assertThat(found.get("R").get(8).doubleValue()).isCloseTo(-0.379117922956, within(1e-9));
        assertThat(found.get("t").get(2).doubleValue()).isCloseTo(11.603196, within(1e-9));
        List<Double> times = truthTimes(truth);
        assertSameTimes(filmTimes(), times);
        assertThat(times.get(1) - times.get(0)).isCloseTo(0.2, within(1e-6));
    }

    private static List<Double> figures(JsonNode list) {
        List<Double> figures = new ArrayList<>();
        list.forEach(n -> figures.add(n.doubleValue()));
        return figures;
    }

    @Test
    void whatCanNotBeRenderedIsSaidInOneLine() throws IOException {
        refused("no scenario 'pick-a-fight-sound' in the library", "pick-a-fight-sound");
        refused(
                "none.yaml: no such camera file",
                SCENE,
                "--camera",
                folder.resolve("none.yaml").toString());
        Files.writeString(camera, CAMERA.replace("t: [-7.902539, ", "t: ["));
        refused("camera.yaml: t: expected a list of 3 figures", SCENE, "--camera", camera.toString());
        refused("--frames 500", SCENE, "--frames", "500");
        refused("--view drone", SCENE, "--view", "drone");
        refused("--floor ice", SCENE, "--floor", "ice");
        refused("--bits 5", SCENE, "--bits", "5");
    }

    private void refused(String words, String... arguments) {
        List<String> all =
                new ArrayList<>(List.of("render", "--out", folder.resolve("out").toString()));
        all.addAll(List.of(arguments));
        CommandRun run = CommandRun.of(all.toArray(String[]::new));
        assertThat(run.exitCode()).as(run.err()).isEqualTo(2);
        assertThat(run.err().lines()).as(run.err()).hasSize(1);
        assertThat(run.err()).contains(words);
        assertThat(folder.resolve("out")).doesNotExist();
    }
}
