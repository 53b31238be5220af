package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import floorgauge.app.result.Digest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every object is held against what OpenTimelineIO's documentation lists for it ("Serialized Data" and "Serialized Data, Fields Only", which the
 * library generates from itself; version 0.18.1): no field missing, none besides but the children of compositions, and in each a value of
 * the kind that the documentation names. The library itself is not asked: none of the registries that the build uses has it.
 */
class EditTimelineTest {

    private static final Predicate<JsonNode> TEXT = JsonNode::isTextual;
    private static final Predicate<JsonNode> NUMBER = JsonNode::isNumber;
    private static final Predicate<JsonNode> DICTIONARY = JsonNode::isObject;
    private static final Predicate<JsonNode> RANGE = one("TimeRange.1");
    private static final Predicate<JsonNode> NOTHING = JsonNode::isNull;

    private static final Map<String, Map<String, Predicate<JsonNode>>> FIELDS = Map.of(
            "Timeline.1",
            Map.of(
                    "name",
                    TEXT,
                    "metadata",
                    DICTIONARY,
                    "global_start_time",
                    NOTHING.or(one("RationalTime.1")),
                    "tracks",
                    one("Stack.1")),
            "Stack.1",
            item(Map.of("children", each("Track.1"))),
            "Track.1",
            item(Map.of("kind", TEXT, "children", each("Clip.2"))),
            "Clip.2",
            item(Map.of(
                    "media_references",
                    DICTIONARY.and(media -> !media.isEmpty() && all(media, "ExternalReference.1")),
                    "active_media_reference_key",
                    TEXT)),
            "ExternalReference.1",
            Map.of(
                    "name",
                    TEXT,
                    "metadata",
                    DICTIONARY,
                    "available_range",
                    NOTHING.or(RANGE),
                    "available_image_bounds",
                    NOTHING.or(one("Box2d.1")),
                    "target_url",
                    TEXT),
            "Marker.2",
            Map.of("name", TEXT, "metadata", DICTIONARY, "color", TEXT, "comment", TEXT, "marked_range", RANGE),
            "TimeRange.1",
            Map.of("start_time", one("RationalTime.1"), "duration", one("RationalTime.1")),
            "RationalTime.1",
            Map.of("rate", NUMBER, "value", NUMBER));

    private static final Set<String> MARKER_COLOURS =
            Set.of("PINK", "RED", "ORANGE", "YELLOW", "GREEN", "CYAN", "BLUE", "PURPLE", "MAGENTA", "BLACK", "WHITE");

    @TempDir
    private Path folder;

    /** An item's own fields, and further ones. */
    private static Map<String, Predicate<JsonNode>> item(Map<String, Predicate<JsonNode>> further) {
        Map<String, Predicate<JsonNode>> fields = new TreeMap<>(further);
        fields.put("name", TEXT);
        fields.put("metadata", DICTIONARY);
        fields.put("source_range", NOTHING.or(RANGE));
        fields.put("effects", each("Effect.1"));
        fields.put("markers", each("Marker.2"));
        fields.put("enabled", JsonNode::isBoolean);
        return fields;
    }

    private static Predicate<JsonNode> one(String schema) {
        return node -> node.path("OTIO_SCHEMA").asText().equals(schema);
    }

    private static Predicate<JsonNode> each(String schema) {
        return node -> node.isArray() && all(node, schema);
    }

    private static boolean all(JsonNode nodes, String schema) {
        for (JsonNode node : nodes) {
            if (!one(schema).test(node)) {
                return false;
            }
        }
        return true;
    }

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
            case "RationalTime.1" -> assertThat(node.get("rate").asDouble()).isPositive();
            case "TimeRange.1" ->
                assertThat(node.at("/duration/value").asDouble()).isNotNegative();
            default -> {}
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
            assertThat(fields)
                    .as(schema)
                    .isEqualTo(new TreeSet<>(FIELDS.get(schema).keySet()));
            FIELDS.get(schema)
                    .forEach((field, kind) -> assertThat(kind.test(node.get(field)))
                            .as(schema + " " + field)
                            .isTrue());
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
