package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every object is held against the fields that OpenTimelineIO's documentation lists for it ("Serialized Data, Fields Only", generated from
 * the library): none missing, none besides but the children of compositions.
 */
class EditTimelineTest {

    private static final Map<String, Set<String>> FIELDS = Map.of(
            "Timeline.1", Set.of("name", "metadata", "global_start_time", "tracks"),
            "Stack.1", Set.of("name", "metadata", "source_range", "effects", "markers", "enabled", "children"),
            "Track.1", Set.of("name", "metadata", "source_range", "effects", "markers", "enabled", "kind", "children"),
            "Clip.2",
                    Set.of(
                            "name",
                            "metadata",
                            "source_range",
                            "effects",
                            "markers",
                            "enabled",
                            "media_references",
                            "active_media_reference_key"),
            "ExternalReference.1",
                    Set.of("name", "metadata", "available_range", "available_image_bounds", "target_url"),
            "Marker.2", Set.of("name", "metadata", "color", "comment", "marked_range"),
            "TimeRange.1", Set.of("start_time", "duration"),
            "RationalTime.1", Set.of("rate", "value"));

    @TempDir
    private Path folder;

    @Test
    void everyObjectHasTheFieldsOfItsSchema() throws IOException {
        JsonNode timeline = timeline();
        Set<String> seen = new TreeSet<>();
        check(timeline, seen);
        assertThat(seen).isEqualTo(new TreeSet<>(FIELDS.keySet()));
    }

    @Test
    void clipsFollowEachOtherWithinTheirFilm() throws IOException {
        JsonNode track = timeline().at("/tracks/children/0");
        assertThat(track.get("kind").asText()).isEqualTo("Video");
        assertThat(track.get("children")).hasSize(2);
        for (JsonNode clip : track.get("children")) {
            JsonNode available = clip.at("/media_references/DEFAULT_MEDIA/available_range");
            double from = clip.at("/source_range/start_time/value").asDouble();
            double to = from + clip.at("/source_range/duration/value").asDouble();
            assertThat(from)
                    .isGreaterThanOrEqualTo(available.at("/start_time/value").asDouble());
            assertThat(to).isLessThanOrEqualTo(available.at("/duration/value").asDouble());
            assertThat(clip.at("/source_range/duration/rate").asDouble()).isEqualTo(25);
            double marked = clip.at("/markers/0/marked_range/start_time/value").asDouble();
            assertThat(marked).isBetween(from, to);
        }
        assertThat(track.at("/children/0/source_range/start_time/value").asDouble())
                .isZero();
        assertThat(track.at("/children/1/source_range/start_time/value").asDouble())
                .isEqualTo(60);
    }

    @Test
    void aFilmThatIsNotAtHandIsNamedForRelinking() throws IOException {
        assertThat(timeline()
                        .at("/tracks/children/0/children/0/media_references/DEFAULT_MEDIA/target_url")
                        .asText())
                .isEqualTo("monday%20%233.mp4");
    }

    private static void check(JsonNode node, Set<String> seen) {
        if (node.has("OTIO_SCHEMA")) {
            String schema = node.get("OTIO_SCHEMA").asText();
            assertThat(FIELDS).containsKey(schema);
            Set<String> fields = new TreeSet<>();
            node.fieldNames().forEachRemaining(fields::add);
            fields.remove("OTIO_SCHEMA");
            assertThat(fields).as(schema).isEqualTo(new TreeSet<>(FIELDS.get(schema)));
            seen.add(schema);
        }
        node.forEach(child -> check(child, seen));
    }

    private JsonNode timeline() throws IOException {
        Path results = ExportedFilms.results(folder, "monday", "monday #3.mp4", "0".repeat(64));
        new EditTimeline().write(ExportedFilms.everything(results), ExportFolder.open(folder.resolve("out")));
        return new ObjectMapper().readTree(folder.resolve("out/findings.otio").toFile());
    }
}
