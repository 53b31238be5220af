package floorgauge.sampleclips.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.CourtEnd;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.camera.FrameTimes;
import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RenderJobTest {

    @TempDir
    private Path folder;

    private static RenderPlan plan(CameraStyle style) {
        return RenderPlan.of(TestScenes.runPast(), CourtEnd.POSITIVE_X, style, 9)
                .withTimes(FrameTimes.even(20, 0.2));
    }

    @Test
    void writesTheSameTruthAndFramesTwice() throws IOException {
        RenderedFilm a = new RenderJob(plan(CameraStyle.PHONE), folder.resolve("a"), "clip").run((done, total) -> {});
        RenderedFilm b = new RenderJob(plan(CameraStyle.PHONE), folder.resolve("b"), "clip").run((done, total) -> {});
        assertThat(b.rawDigest()).isEqualTo(a.rawDigest());
        assertThat(Files.readAllBytes(b.truth())).isEqualTo(Files.readAllBytes(a.truth()));
        assertThat(Files.readAllBytes(b.tracks())).isEqualTo(Files.readAllBytes(a.tracks()));
        assertThat(Files.readAllBytes(b.poses())).isEqualTo(Files.readAllBytes(a.poses()));
        assertThat(Files.readAllBytes(b.film())).isEqualTo(Files.readAllBytes(a.film()));
    }

    @Test
    void leavesAFilmThatPlaysAndTruthThatReads() throws IOException {
        RenderedFilm film = new RenderJob(plan(CameraStyle.TRIPOD_SIDE), folder, "clip").run((done, total) -> {});
        try (FilmReader reader = FilmReader.open(film.film())) {
            assertThat(reader.info().width()).isEqualTo(1280);
        }
        JsonNode truth = new ObjectMapper().readTree(film.truth().toFile());
        JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(getClass().getResourceAsStream("/floorgauge/sampleclips/truth/truth.schema.json"));
        assertThat(schema.validate(truth)).isEmpty();
        assertThat(truth.get("frames")).hasSize(4);
        assertThat(truth.get("frames").get(0).get("camera").get("R")).hasSize(9);
        assertThat(truth.get("frames").get(1).has("camera"))
                .as("a still camera is written once")
                .isFalse();
        JsonNode poses = new ObjectMapper().readTree(film.poses().toFile());
        assertThat(poses.get("annotations").get(0).get("keypoints")).hasSize(51);
        List<String> rows = Files.readAllLines(film.tracks());
        assertThat(rows).hasSize(8).allMatch(row -> row.split(",").length == 10);
        try (var files = Files.list(folder)) {
            assertThat(files.map(Path::toString)).noneMatch(name -> name.endsWith(".part"));
        }
    }

    /** 60000/1001 frames a second, as broadcast cameras film (SMPTE ST 12-1, from memory). */
    @Test
    void filmsAtABroadcastRate() throws IOException {
        List<Double> times = times(FrameTimes.even(60_000 / 1001.0, 0.15));
        assertThat(times).hasSize(8);
        assertThat(times.get(7)).isCloseTo(7 * 1001 / 60_000.0, within(0.001));
    }

    /** A phone's frames come when they are ready, and some do not come. */
    @Test
    void filmsAtAVariableRate() throws IOException {
        FrameTimes even = FrameTimes.even(30, 1);
        FrameTimes variable = FrameTimes.variable(30, 1, 5);
        assertThat(variable.count()).isLessThan(even.count());
        List<Double> times = times(FrameTimes.variable(30, 0.4, 5));
        assertThat(times.get(2) - times.get(1)).isNotCloseTo(times.get(1) - times.get(0), within(1e-4));
    }

    /** Of a film's frames, which must be those of its truth. */
    private List<Double> times(FrameTimes wanted) throws IOException {
        RenderPlan plan = plan(CameraStyle.TRIPOD_SIDE).withTimes(wanted);
        RenderedFilm film = new RenderJob(plan, folder, "clip").run((done, total) -> {});
        JsonNode frames = new ObjectMapper().readTree(film.truth().toFile()).get("frames");
        List<Double> times = new ArrayList<>();
        try (FilmReader reader = FilmReader.open(film.film());
                FilmFrame frame = new FilmFrame()) {
            while (reader.read(frame)) {
                assertThat(frame.timeSeconds())
                        .isCloseTo(frames.get(times.size()).get("time").doubleValue(), within(0.001));
                times.add(frame.timeSeconds());
            }
        }
        assertThat(times).hasSize(wanted.count()).hasSameSizeAs(frames);
        return times;
    }

    @Test
    void saysWhereItCannotWrite() throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "");
        RenderJob job = new RenderJob(plan(CameraStyle.TRIPOD_SIDE), file.resolve("inside"), "clip");
        assertThatThrownBy(() -> job.run((done, total) -> {}))
                .isInstanceOf(MendableException.class)
                .hasMessageContaining("taken");
    }
}
