package floorgauge.sampleclips.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FaultyScenarioTest {

    private static final String GOOD = """
            title: A cut
            duration: 3
            attack:
              1: top
              2: left wing
              3: right wing
            ball: 1
            play:
              - {at: 0.2, who: 2, cut: rim, label: go}
              - {after: go, who: 1, pass: 2}
            versions:
              held: [{fault: pass held, step: step 2, for: 1}]
            """;

    @TempDir
    Path folder;

    @Test
    void aFileOfTheUsersOwnIsPlayed() throws IOException {
        Path file = folder.resolve("mine.yaml");
        Files.writeString(file, GOOD);
        assertThat(ScenarioLibrary.versions(file)).containsExactly("sound", "held");
        assertThat(ScenarioLibrary.load(file, "held", 4).name()).isEqualTo("mine-held");
        assertThatThrownBy(() -> ScenarioLibrary.load(file, "odd", 4))
                .hasMessageEndingWith("mine.yaml: no version 'odd'; expected one of sound, held");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "cut: rim | gallop: rim | line 9: play[0]: no verb that is known in [gallop]; expected one of cut, spot up,",
                "cut: rim | cut: rim, pace: 12 | line 9: play[0].pace: expected a number from 0.3 to 9, found 12",
                "3: right wing | 6: right wing | line 6: attack.6: expected players 1 to 5, at most five a side, found '6'",
                "cut: rim | cut: moon | line 9: play[0].cut: unknown spot 'moon'; expected [out, left] or one of rim, top,",
                "who: 2 | who: x2 | line 9: play[0]: 'cut' is for an attacker, 1 to 5, found x2",
                "who: 2 | who: 5 | line 9: play[0].who: player 5 does not play; the attackers are [1, 2, 3]",
                "after: go | after: gone | line 10: play[1]: no earlier step is labelled 'gone'",
                "after: go, | after: go, at: 1, | line 10: play[1]: expected one of 'at' (seconds), 'after' (a label) or 'with' (a label)",
                "pass: 2 | pass: x2 | line 10: play[1].pass: expected a team-mate of 1, found x2",
                "ball: 1 | ball: 4 | line 7: ball: expected one of the attackers [1, 2, 3]",
                "pass held | pass kept | line 12: versions.held[0].fault: unknown fault 'pass kept'; expected one of screen misses,",
                "for: 1} | for: 9} | line 12: versions.held[0].for: expected a number from 0.1 to 5, found 9",
                "title: A cut | titel: A cut | line 1: titel: unknown field; expected one of title,",
                "title: A cut | '' | line 2: field 'title' is missing",
                "duration: 3 | duration: soon | line 2: duration: expected a number from 1 to 60, found 'soon'",
                "{at: 0.2 | {at: [0.2 | line 9: not YAML",
                "who: 1, pass: 2} | who: 3, pass: 2} | line 10: 'step 2' waits for the ball, which 3 does not get",
            })
    void eachFaultGivesOneLineThatNamesFileLineAndWhatWasExpected(String good, String bad, String message)
            throws IOException {
        Path file = folder.resolve("odd.yaml");
        String text = GOOD.replace(good, bad);
        assertThat(text).isNotEqualTo(GOOD);
        Files.writeString(file, text);
        assertThatThrownBy(() -> ScenarioLibrary.load(file, "sound", 0))
                .isInstanceOf(MendableException.class)
                .hasMessageStartingWith(file + ", " + message)
                .hasMessageNotContaining("\n");
    }
}
