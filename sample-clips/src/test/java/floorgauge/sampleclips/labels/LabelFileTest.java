package floorgauge.sampleclips.labels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.sampleclips.input.InputException;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LabelFileTest {

    private static final String HASH = "0123456789abcdef".repeat(4);
    private static final String GOOD = """
            {
              "schemaVersion": 1,
              "film": {"file": "monday.mp4", "sha256": "%s"},
              "timeBase": "film presentation time, seconds",
              "annotator": "assistant coach",
              "guidelineVersion": 1,
              "rules": "fiba",
              "people": [{"id": 3, "side": "attack"}, {"id": 5, "side": "attack", "number": 12}, {"id": 8, "side": "defence"}],
              "possessions": [],
              "events": [
                {
                  "id": "a",
                  "kind": "screen",
                  "label": "down screen",
                  "from": 3.2,
                  "at": 4,
                  "to": 4.6,
                  "roles": [{"role": "screener", "person": 5}, {"role": "user", "person": 3}, {"role": "user's defender", "person": 8}],
                  "grade": 4,
                  "cantTell": ["gap"]
                }
              ],
              "unclear": [{"from": 9, "to": 10.5, "why": "the camera looks at the bench"}]
            }
            """.formatted(HASH);

    private static JsonSchema schema() throws IOException {
        try (var in = LabelFileTest.class.getResourceAsStream("labels.schema.json")) {
            return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    private static JsonNode json(String text) throws IOException {
        return new ObjectMapper().readTree(text);
    }

    @Test
    void handLabelsAreRead() throws IOException {
        FilmLabels labels = LabelReader.read("hand.json", GOOD);
        assertThat(schema().validate(json(GOOD))).isEmpty();
        assertThat(labels.film().orElseThrow().sha256()).isEqualTo(HASH);
        LabelledEvent screen = labels.events().get(0);
        assertThat(screen.kind()).isEqualTo(FindingKind.SCREEN);
        assertThat(screen.holder(Role.USER_DEFENDER)).hasValue(8);
        assertThat(screen.grade()).hasValue(4);
        assertThat(screen.cantTell()).containsExactly("gap");
        assertThat(labels.unclear()).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"schemaVersion\": 1 | \"schemaVersion\": 7 | line 2: schemaVersion: expected version 1, found 7",
                "\"person\": 3 | \"person\": 4 | line 18: events[0].roles[1].person: expected the id of someone under 'people', found 4",
                "\"kind\": \"screen\" | \"kind\": \"pick\" | line 13: events[0].kind: unknown kind 'pick'; expected one of screen,",
                "\"to\": 4.6 | \"to\": 3.1 | line 17: events[0].to: expected a number from 3.2 to 86400, found 3.1",
                "\"grade\": 4 | \"grade\": 9 | line 19: events[0].grade: expected a number from 1 to 5, found 9",
                "\"grade\": 4, | \"score\": 4, | line 19: events[0].score: unknown field; expected one of id, kind",
                "\"annotator\": \"assistant coach\", | '' | line 1: field 'annotator' is missing",
                "\"annotator\": \"assistant coach\" | \"annotator\": null | line 5: annotator: expected a value, found null",
                "\"rules\": \"fiba\", | \"rules\": fiba, | line 7: not JSON",
                "\"file\": \"monday.mp4\", | '' | line 3: film: field 'file' is missing",
            })
    void eachErrorNamesFileLineFieldAndWhatWasExpected(String good, String bad, String message) {
        String broken = GOOD.replace(good, bad);
        assertThat(broken).isNotEqualTo(GOOD);
        assertThatThrownBy(() -> LabelReader.read("hand.json", broken))
                .isInstanceOf(InputException.class)
                .hasMessageStartingWith("hand.json, " + message)
                .hasMessageNotContaining("\n");
    }

    @Test
    void whatTheReaderRefusesTheSchemaRefuses() throws IOException {
        for (String[] change : new String[][] {
            {"\"schemaVersion\": 1", "\"schemaVersion\": 7"},
            {"\"kind\": \"screen\"", "\"kind\": \"pick\""},
            {"\"grade\": 4", "\"grade\": 9"},
            {"\"annotator\": \"assistant coach\",", ""},
            {HASH, "ABC"}
        }) {
            assertThat(schema().validate(json(GOOD.replace(change[0], change[1]))))
                    .as(change[1])
                    .isNotEmpty();
        }
    }

    @Test
    void theSchemaNamesEveryKindRoleAndFigure() throws IOException {
        JsonNode event = schema().getSchemaNode().at("/$defs/event/properties");
        assertThat(words(event.at("/kind/enum")))
                .containsExactlyElementsOf(Arrays.stream(FindingKind.values())
                        .map(FindingKind::words)
                        .toList());
        assertThat(words(event.at("/roles/items/properties/role/enum")))
                .containsExactlyElementsOf(
                        Arrays.stream(Role.values()).map(Role::words).toList());
        assertThat(words(event.at("/figures/items/properties/name/enum")))
                .containsExactlyElementsOf(FigureNames.all().keySet());
    }

    private static List<String> words(JsonNode list) {
        List<String> words = new ArrayList<>();
        list.forEach(n -> words.add(n.asText()));
        return words;
    }

    @Test
    void truthOfTheLibraryFollowsTheSchemaAndComesBackAsItWas(@TempDir Path folder) throws IOException {
        JsonSchema schema = schema();
        for (String name : ScenarioLibrary.list()) {
            FilmLabels labels =
                    SceneLabeller.label(ScenarioLibrary.load(name, 2), 2).of(new FilmReference(name + ".mp4", HASH));
            String text = LabelWriter.text(labels);
            assertThat(schema.validate(json(text))).as(name).isEmpty();
            Path file = folder.resolve(name + ".json");
            LabelWriter.write(labels, file);
            assertThat(Files.readString(file)).isEqualTo(text);
            FilmLabels again = LabelReader.read(file);
            assertThat(LabelWriter.text(again)).as(name).isEqualTo(text);
            assertThat(LabelWriter.text(SceneLabeller.label(ScenarioLibrary.load(name, 2), 2)
                            .of(new FilmReference(name + ".mp4", HASH))))
                    .as("same scene and seed, same bytes")
                    .isEqualTo(text);
        }
    }
}
