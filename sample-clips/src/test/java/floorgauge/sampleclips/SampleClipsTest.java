package floorgauge.sampleclips;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.court.calibration.OpenCv;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.LabelReader;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.SceneReference;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The clips that come with the project: what they are, and that their truth is still that of their scenarios. */
class SampleClipsTest {

    private static final Path FOLDER = Path.of("").toAbsolutePath();
    private static final long MOST_BYTES = 12_000_000;

    static List<String> clips() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(f -> f.getFileName().toString())
                    .filter(n -> n.endsWith(".mp4"))
                    .map(n -> n.substring(0, n.length() - 4))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void fourToSixClipsTakeLittleRoom() throws IOException {
        assertThat(clips()).hasSizeBetween(4, 6).anyMatch(n -> n.endsWith("-sound"));
        long bytes = 0;
        try (Stream<Path> files = Files.list(FOLDER)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                bytes += Files.size(file);
            }
        }
        assertThat(bytes).isLessThan(MOST_BYTES);
    }

    @ParameterizedTest
    @MethodSource("clips")
    void aClipIsShortAndOfTheRightSize(String name) {
        OpenCv.load();
        double last = 0;
        try (FilmReader film = FilmReader.open(FOLDER.resolve(name + ".mp4"));
                FilmFrame frame = new FilmFrame()) {
            assertThat(film.info().width()).isEqualTo(1280);
            assertThat(film.info().height()).isEqualTo(720);
            while (film.read(frame)) {
                last = frame.timeSeconds();
            }
        }
        assertThat(last).isBetween(6.0, 12.0);
    }

    @ParameterizedTest
    @MethodSource("clips")
    void labelsAreThoseOfTheScenarioAsItPlaysNow(String name) {
        FilmLabels labels = LabelReader.read(FOLDER.resolve(name + ".labels.json"));
        SceneReference reference = labels.scene().orElseThrow();
        PlayedScene scene = ScenarioLibrary.load(reference.name(), reference.seed());
        List<LabelledEvent> now = SceneLabeller.label(scene, reference.seed()).events();
        assertThat(labels.events().size())
                .as("true events of " + name + "; where they are meant to differ, render the clip anew")
                .isEqualTo(now.size());
        for (int i = 0; i < now.size(); i++) {
            LabelledEvent written = labels.events().get(i);
            assertThat(written.kind()).as(written.id()).isEqualTo(now.get(i).kind());
            assertThat(written.roles()).as(written.id()).isEqualTo(now.get(i).roles());
            assertThat(written.fromSeconds())
                    .as(written.id())
                    .isCloseTo(now.get(i).fromSeconds(), within(0.001));
        }
    }

    @ParameterizedTest
    @MethodSource("clips")
    void positionsAreThoseOfTheScenarioAsItPlaysNow(String name) throws IOException {
        JsonNode truth;
        try (var in = new GZIPInputStream(Files.newInputStream(FOLDER.resolve(name + ".truth.json.gz")))) {
            truth = new ObjectMapper().readTree(in);
        }
        PlayedScene scene = ScenarioLibrary.load(
                truth.get("scenario").asText(), truth.get("seed").asLong());
        assertThat(truth.get("rules").asText()).isEqualTo(scene.rules().name());
        JsonNode frames = truth.get("frames");
        for (int i = 0; i < frames.size(); i += 30) {
            List<PersonState> people =
                    scene.at(frames.get(i).get("sceneTime").doubleValue()).people();
            for (JsonNode person : frames.get(i).get("people")) {
                int id = person.get("id").asInt();
                if (id <= people.size()) {
                    assertThat(person.get("floor").get(0).doubleValue())
                            .as("frame " + i + ", person " + id)
                            .isCloseTo(people.get(id - 1).position().xMetres(), within(0.002));
                }
            }
        }
    }
}
