package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.app.result.Digest;
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

    private static final Set<String> MARKER_COLOURS =
            Set.of("PINK", "RED", "ORANGE", "YELLOW", "GREEN", "CYAN", "BLUE", "PURPLE", "MAGENTA", "BLACK", "WHITE");

    @TempDir
    private Path folder;

    @Test
    void everyObjectHasTheFieldsOfItsSchema() throws IOException {
        JsonNode timeline = timeline();
        Set<String> seen = new TreeSet<>();
        check(timeline, seen);
        assertThat(seen).isEqualTo(new TreeSet<>(FIELDS.keySet()));
    }

    /**
     * What the library's readers ask of values beside their names: the key of the medium in use names one of the media and is not
     * empty (Clip), kinds of tracks and colours of markers are those of its lists (Track.Kind, Marker.Color), a rate is above
     * zero, and an address of a local film begins with {@code file://} ("Serialized Data", ExternalReference; version 0.18.1).
     */
    @Test
    void valuesAreThoseThatTheLibraryTakes() throws IOException {
        JsonNode timeline = timeline();
        assertThat(timeline.get("OTIO_SCHEMA").asText()).isEqualTo("Timeline.1");
        assertThat(timeline.at("/tracks/OTIO_SCHEMA").asText()).isEqualTo("Stack.1");
        values(timeline);
    }

    private static void values(JsonNode node) {
        switch (node.path("OTIO_SCHEMA").asText()) {
            case "Clip.2" -> {
                String key = node.get("active_media_reference_key").asText();
                assertThat(key).isNotEmpty();
                assertThat(node.get("media_references").fieldNames())
                        .toIterable()
                        .contains(key)
                        .doesNotContain("");
            }
            case "Track.1" -> assertThat(node.get("kind").asText()).isIn("Video", "Audio");
            case "Marker.2" -> assertThat(node.get("color").asText()).isIn(MARKER_COLOURS);
            case "RationalTime.1" -> {
                assertThat(node.get("rate").asDouble()).isPositive();
                assertThat(node.get("value").isNumber()).isTrue();
            }
            case "TimeRange.1" -> {
                assertThat(node.at("/start_time/OTIO_SCHEMA").asText()).isEqualTo("RationalTime.1");
                assertThat(node.at("/duration/value").asDouble()).isNotNegative();
            }
            default -> {}
        }
        if (node.has("metadata")) {
            assertThat(node.get("metadata").isObject()).isTrue();
            assertThat(node.get("name").isTextual()).isTrue();
        }
        for (String list : Set.of("effects", "markers", "children")) {
            assertThat(!node.has(list) || node.get(list).isArray()).as(list).isTrue();
        }
        node.forEach(EditTimelineTest::values);
    }

    @Test
    void aFilmThatIsAtHandIsAddressedAsAFile() throws IOException {
        Path film = ExportedFilms.grey(folder.resolve("monday #3.mp4"));
        Path results = ExportedFilms.results(folder, "monday", "monday #3.mp4", Digest.ofFile(film));
        ExportOrder all = ExportedFilms.everything(results);
        ExportOrder found = new ExportOrder(all.films(), all.room(), new FilmSearch(java.util.List.of(folder)));
        new EditTimeline().write(found, ExportFolder.open(folder.resolve("out")));
        assertThat(new ObjectMapper()
                        .readTree(folder.resolve("out/findings.otio").toFile())
                        .at("/tracks/children/0/children/0/media_references/DEFAULT_MEDIA/target_url")
                        .asText())
                .isEqualTo(film.toUri().toString())
                .startsWith("file:///")
                .endsWith("monday%20%233.mp4");
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
