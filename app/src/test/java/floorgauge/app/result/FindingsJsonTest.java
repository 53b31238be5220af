package floorgauge.app.result;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import floorgauge.app.InventedFilm;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.Unit;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The written file is held against its schema by an independent validator (networknt json-schema-validator). */
class FindingsJsonTest {

    private static final String SCHEMA = "/floorgauge/app/result/findings.schema.json";

    @TempDir
    private Path folder;

    @Test
    void nothingMeasuredIsStillAValidFile() throws IOException {
        MeasuredFilm full = InventedFilm.measured();
        MeasuredFilm empty = new MeasuredFilm(
                full.film(),
                full.settings(),
                CourtReading.withoutPicture(full.court().rules()),
                new floorgauge.court.track.FilmTracks(new TreeMap<>(), List.of(), Optional.empty()),
                new Findings(List.of(), List.of()));
        assertThat(complaints(write(empty, "empty.json"))).isEmpty();
    }

    @Test
    void aFullFileIsValid() throws IOException {
        assertThat(complaints(write(InventedFilm.measured(), "findings.json"))).isEmpty();
    }

    @Test
    void theSchemaRefusesWhatDoesNotBelong() throws IOException {
        JsonNode file = write(InventedFilm.measured(), "findings.json");
        JsonNode finding = file.at("/possessions/0/findings/0");
        ((com.fasterxml.jackson.databind.node.ObjectNode) finding)
                .put("probability", 1.5)
                .put("mood", "good");
        assertThat(complaints(file)).hasSize(2);
    }

    @Test
    void theSchemaKnowsEveryKindAndUnit() throws IOException {
        JsonNode schema = schemaNode();
        List<String> kinds = new ArrayList<>();
        schema.at("/$defs/finding/properties/kind/enum").forEach(n -> kinds.add(n.asText()));
        assertThat(kinds)
                .containsExactlyInAnyOrderElementsOf(java.util.Arrays.stream(FindingKind.values())
                        .map(FindingKind::words)
                        .toList());
        List<String> units = new ArrayList<>();
        schema.at("/$defs/figure/properties/unit/enum").forEach(n -> units.add(n.asText()));
        assertThat(units)
                .containsExactlyInAnyOrderElementsOf(
                        java.util.Arrays.stream(Unit.values()).map(Unit::symbol).toList());
    }

    @Test
    void figuresCarryValueErrorUnitAndStandard() throws IOException {
        JsonNode gap = write(InventedFilm.measured(), "findings.json").at("/possessions/0/findings/0/figures/1");
        assertThat(gap.toString())
                .isEqualTo("{\"name\":\"gap\",\"value\":0.42,\"standardError\":0.08,\"unit\":\"m\",\"heldAgainst\":"
                        + "{\"standard\":\"contactGapMetres\",\"value\":0.1,\"sound\":\"at most\"}}");
    }

    @Test
    void columnsOfSpacingHaveOneLength() throws IOException {
        JsonNode spacing = write(InventedFilm.measured(), "findings.json").at("/possessions/0/spacing");
        assertThat(spacing).isNotEmpty();
        spacing.forEach(
                column -> assertThat(column).hasSize(spacing.get("timeSeconds").size()));
        assertThat(spacing.at("/leastNearestMetres/65").isNull()).isTrue();
    }

    @Test
    void theSameFilmGivesTheSameBytes() throws IOException {
        write(InventedFilm.measured(), "a.json");
        write(InventedFilm.measured(), "b.json");
        assertThat(folder.resolve("a.json")).hasSameBinaryContentAs(folder.resolve("b.json"));
    }

    @Test
    void theRunThatMadeAFileIsReadFromItsHead() throws IOException {
        MeasuredFilm film = InventedFilm.measured();
        write(film, "findings.json");
        String key = film.settings().keyFor(film.film().sha256());
        assertThat(FindingsJson.made(folder.resolve("findings.json")))
                .contains(new FindingsJson.Made(key, film.film().sha256()));
        assertThat(key)
                .isNotEqualTo(RunSettings.of(Map.of("court", "nba"))
                        .keyFor(film.film().sha256()));
    }

    @Test
    void aFileThatIsMissingBrokenOrForeignHasNoRun() throws IOException {
        assertThat(FindingsJson.made(folder.resolve("none.json"))).isEmpty();
        for (String text :
                List.of("", "[]", "{", "{\"run\":\"x\"}", "{\"format\":\"other\",\"version\":1,\"run\":\"x\"}")) {
            Path file = Files.writeString(folder.resolve("odd.json"), text);
            assertThat(FindingsJson.made(file)).as(text).isEmpty();
        }
    }

    private JsonNode write(MeasuredFilm film, String name) throws IOException {
        Path file = folder.resolve(name);
        FindingsJson.write(film, file);
        return new ObjectMapper().readTree(file.toFile());
    }

    private static List<String> complaints(JsonNode file) throws IOException {
        JsonSchema schema = JsonSchemaFactory.getInstance(VersionFlag.V202012).getSchema(schemaNode());
        return schema.validate(file).stream().map(Object::toString).toList();
    }

    private static JsonNode schemaNode() throws IOException {
        try (InputStream in = FindingsJsonTest.class.getResourceAsStream(SCHEMA)) {
            return new ObjectMapper().readTree(in);
        }
    }
}
