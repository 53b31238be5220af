package floorgauge.events.script;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ScriptFileTest {

    private static final String HEAD = """
            script: drill
            ball: 1
            players: {1: top, 2: right block, 5: right elbow}
            steps:
            """;

    @Test
    void everyShippedScriptReads() {
        List<Script> scripts = ShippedScripts.all(ScriptFileTest::shipped);
        assertThat(scripts).hasSizeGreaterThanOrEqualTo(8);
        assertThat(scripts.stream().map(Script::name)).containsExactlyElementsOf(ShippedScripts.names());
    }

    private static String shipped(String resource) {
        try (InputStream in = ShippedScripts.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void aStepHasItsParts() {
        ScriptStep step = only("  - 5 screens for 2 at the right block (down screen)\n");
        assertThat(step.verb()).isEqualTo(ScriptVerb.SCREEN);
        assertThat(step.mate()).contains("2");
        assertThat(step.place()).contains("right block");
        assertThat(step.kind()).contains("down screen");
        assertThat(step.line()).isEqualTo(5);
        assertThat(step.words()).isEqualTo("5 screens for 2 at right block");
    }

    /** The example that stands beside each verb reads, so that hints never name what cannot be written. */
    @ParameterizedTest
    @EnumSource(ScriptVerb.class)
    void everyVerbsExampleReads(ScriptVerb verb) {
        String who = verb.example().substring(0, 1);
        String text = "script: drill\nball: " + (verb == ScriptVerb.SCREEN || verb == ScriptVerb.CUT ? "1" : who)
                + "\nplayers: {1: top, 2: right block, 4: left elbow, 5: right elbow}\nsteps:\n  - " + verb.example()
                + "\n";
        Script script = ScriptFile.read(text, "drill.yaml");
        assertThat(script.variants().get(0).get(0).verb()).isEqualTo(verb);
    }

    /** The manual holds every verb's example, and its whole script reads. */
    @Test
    void theManualsExamplesRead() throws IOException {
        String manual = Files.readString(Path.of("../docs/scripts.md"));
        for (ScriptVerb verb : ScriptVerb.values()) {
            assertThat(manual).contains("`" + verb.example() + "`");
        }
        String whole = manual.substring(manual.indexOf("```yaml") + "```yaml".length());
        Script script = ScriptFile.read(whole.substring(0, whole.indexOf("```")), "scripts.md");
        assertThat(script.name()).isEqualTo("pin-down");
        assertThat(script.variants()).hasSize(2);
    }

    @Test
    void alternativesMakeWays() {
        Script script = read("""
                  - 5 screens for 2
                  - either:
                      - 1 passes to 2
                      - [2 cuts to top off 5, 1 passes to 2]
                  - maybe: 2 shoots
                """);
        assertThat(script.variants()).hasSize(4);
    }

    @Test
    void stepsTogetherComeInAnyOrderButKeepTheirOwn() {
        Script script = ScriptFile.read("""
                script: drill
                ball: 1
                players: {1: top, 2: right block, 3: left block, 4: left elbow, 5: right elbow}
                steps:
                  - together:
                      - [5 screens for 2, 2 cuts to right slot off 5]
                      - [4 screens for 3, 3 cuts to left slot off 4]
                """, "drill.yaml");
        List<List<ScriptStep>> orders = SequenceAligner.orders(script.variants().get(0));
        assertThat(orders).hasSize(6).doesNotHaveDuplicates();
        assertThat(orders).allSatisfy(order -> {
            List<String> who = order.stream().map(ScriptStep::who).toList();
            assertThat(who.indexOf("5")).isLessThan(who.indexOf("2"));
            assertThat(who.indexOf("4")).isLessThan(who.indexOf("3"));
        });
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            5 screns for 2                  | line 5: unknown verb 'screns'; did you mean 'screens'?
            5 screens                       | line 5: 5 screens for whom or where? Write '5 screens for 2 at right block (down screen)'
            5 screens for 5                 | line 5: '5' cannot do this with himself
            7 screens for 2                 | line 5: unknown role '7'
            5 screens for 2 at rigt block   | line 5: unknown place 'rigt block'; did you mean 'right block'?
            5 screens for 2 (dawn screen)   | line 5: unknown screen 'dawn screen'; did you mean 'down screen'?
            2 passes to 1                   | line 5: 2 does not have the ball; 1 starts with it
            1 cuts to top                   | line 5: 1 has the ball, and dribbles rather than cuts
            1 screens for 2                 | line 5: 1 has the ball and cannot screen
            2 shoots                        | line 5: 2 does not have the ball
            1 passes off 2                  | line 5: 'off' does not go with 'passes'
            """)
    void aStepThatCannotBeSaysWhereAndWhatToWrite(String step, String message) {
        assertThatThrownBy(() -> read("  - " + step + "\n"))
                .isInstanceOf(ScriptException.class)
                .hasMessageStartingWith("drill.yaml, " + message);
    }

    @Test
    void theLineOfTheStepThatMadeItImpossibleIsNamed() {
        assertThatThrownBy(() -> read("  - 1 passes to 2\n  - 1 dribbles to top\n"))
                .hasMessage("drill.yaml, line 6: 1 does not have the ball; 2 has it since line 5");
        assertThatThrownBy(() -> read("  - 1 shoots\n  - 5 screens for 2\n"))
                .hasMessage("drill.yaml, line 6: nothing comes after the shot of line 5");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ''                                            | line 1: the file is empty
            'steps: ['                                    | line 1: not YAML
            'scrip: x'                                    | line 1: unknown key 'scrip'; did you mean 'script'?
            'script: x'                                   | line 1: 'players' is missing
            """)
    void aFileThatIsNoScriptSaysSo(String text, String message) {
        assertThatThrownBy(() -> ScriptFile.read(text, "drill.yaml"))
                .isInstanceOf(ScriptException.class)
                .hasMessageContaining(message);
    }

    private static Script read(String steps) {
        return ScriptFile.read(HEAD + steps, "drill.yaml");
    }

    private static ScriptStep only(String step) {
        List<List<ScriptStep>> variants = read(step).variants();
        assertThat(variants).hasSize(1);
        assertThat(variants.get(0)).hasSize(1);
        assertThat(Optional.of(variants.get(0).get(0))).isPresent();
        return variants.get(0).get(0);
    }
}
