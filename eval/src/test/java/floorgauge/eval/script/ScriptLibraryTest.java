package floorgauge.eval.script;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.events.Measurement;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.ScriptReading;
import floorgauge.events.script.Script;
import floorgauge.events.script.ShippedScripts;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Holds scenes of the library against all scripts that ship, on true tracks: which script it was, and at which step of whom it broke.
 * What breaks is known from the scene's own labels.
 */
class ScriptLibraryTest {

    private static final long SEED = 304;
    private static final List<Script> SCRIPTS = ShippedScripts.all(ScriptLibraryTest::text);

    private static final Map<String, String> SCRIPT_OF = Map.of(
            "chin-shuffle", "chin",
            "flex-down", "flex",
            "motion-weak", "motion-weak",
            "floppy-curl", "floppy-curl",
            "double-drag", "double-drag",
            "elevator", "elevator");

    private static String text(String resource) {
        try (InputStream in = ShippedScripts.class.getResourceAsStream(resource)) {
            return new String(Objects.requireNonNull(in, resource).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ScriptReading read(PlayedScene scene) {
        Findings findings = Measurement.measure(
                TrueTracks.sample(scene, 25, TrackNoise.NONE, SEED), scene.rules(), Standards.defaults(), SCRIPTS);
        return findings.possessions().get(0).script().orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {"chin-shuffle", "flex-down", "motion-weak", "floppy-curl", "double-drag", "elevator"})
    void aSoundSceneIsItsScriptAndKeepsToIt(String scenario) {
        ScriptReading reading = read(ScenarioLibrary.load(scenario + "-sound", SEED));
        assertThat(reading.script()).startsWith(SCRIPT_OF.get(scenario));
        assertThat(reading.breakdown()).as(reading.sentence()).isEmpty();
        assertThat(reading.probability()).isGreaterThan(0.5);
    }

    @Test
    void aScreenThatMissesIsTheScreenersStep() {
        breaks("floppy-curl-screen-misses", " screens ", FindingKind.WEAK_SCREEN, Role.SCREENER);
        breaks("motion-weak-cross-misses", " screens ", FindingKind.MISSED_SCREEN, Role.SCREENER);
    }

    @Test
    void aStolenPassIsThePassersStep() {
        breaks("chin-shuffle-pass-stolen", " passes ", FindingKind.TURNOVER, Role.PASSER);
    }

    @Test
    void aPassHeldTooLongIsThePassersStep() {
        breaks("floppy-pass-held", " passes ", FindingKind.LATE_PASS, Role.PASSER);
    }

    private static void breaks(String name, String verb, FindingKind label, Role role) {
        PlayedScene scene = ScenarioLibrary.load(name, SEED);
        ScriptReading reading = read(scene);
        assertThat(reading.breakdown()).as(reading.sentence()).isPresent();
        String words = reading.steps().get(reading.breakdown().getAsInt()).words();
        assertThat(words).as(reading.sentence()).contains(verb);
        int who = reading.roles().stream()
                .filter(r -> words.startsWith(r.role() + " "))
                .findFirst()
                .orElseThrow()
                .trackId();
        List<Integer> atFault = SceneLabeller.label(scene, SEED).events().stream()
                .filter(e -> e.kind() == label && !e.cantTell().contains(LabelledEvent.EXISTENCE))
                .map(e -> e.holder(role).orElseThrow())
                .toList();
        assertThat(atFault).as(reading.sentence()).contains(who);
    }
}
