package floorgauge.events.standards;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class StandardsFileTest {

    private static Standards read(String text) {
        return StandardsFile.read(text, "gulls.yaml", Standards.defaults());
    }

    @Test
    void anEmptyFileKeepsTheDefaults() {
        assertThat(read("")).isEqualTo(Standards.defaults());
        assertThat(read("# nothing\n")).isEqualTo(Standards.defaults());
    }

    @Test
    void valuesAreTurnedToSi() {
        Standards read = read("team: Harbour Gulls\nspacing:\n  crowded-distance: 8 ft\nscreen: {contact-gap: 12cm}\n");
        assertThat(read.team()).isEqualTo("Harbour Gulls");
        assertThat(read.of(Setting.SPACING_CROWDED_DISTANCE)).isCloseTo(2.4384, within(1e-12));
        assertThat(read.of(Setting.SCREEN_CONTACT_GAP)).isCloseTo(0.12, within(1e-12));
        assertThat(read.of(Setting.SPACING_CROWDED_TIME)).isEqualTo(1.0);
    }

    @Test
    void aTeamFileOverridesItsBase() {
        Standards base = Standards.defaults().with(Setting.PASS_ON_TIME, 0.8);
        Standards read = StandardsFile.read("window: {time: 400 ms}", "a.yaml", base);
        assertThat(read.of(Setting.PASS_ON_TIME)).isEqualTo(0.8);
        assertThat(read.of(Setting.WINDOW_TIME)).isCloseTo(0.4, within(1e-12));
    }

    @Test
    void whatIsWrittenIsReadBackTheSame() {
        Standards standards = new Standards("Gulls", Standards.defaults().values()).with(Setting.CUT_SPEED, 2.75);
        assertThat(read(StandardsFile.write(standards))).isEqualTo(standards);
    }

    @Test
    void anUnknownKeyIsNamedWithItsLineAndAHint() {
        assertThatThrownBy(() -> read("screen:\n  contact-gap: 0.1 m\n  contact-tme: 1 s\n"))
                .isInstanceOf(StandardsException.class)
                .hasMessage("gulls.yaml, line 3: unknown key 'screen.contact-tme'; did you mean 'screen.contact-gap'?");
        assertThatThrownBy(() -> read("spacng: {}"))
                .hasMessage("gulls.yaml, line 1: unknown key 'spacng'; did you mean 'spacing'?");
    }

    @Test
    void aWrongUnitIsNamedWithItsLineAndAnExample() {
        assertThatThrownBy(() -> read("spacing:\n  crowded-distance: 2.4 s"))
                .hasMessage(
                        "gulls.yaml, line 2: spacing.crowded-distance has the unit 's', which is not one of its own;"
                                + " write 2.4 m, 240 cm or 8 ft");
        assertThatThrownBy(() -> read("spacing:\n  crowded-distance: 2.4"))
                .hasMessageContaining("line 2: spacing.crowded-distance has no unit; write 2.4 m");
    }

    @Test
    void aValueOutOfRangeIsNamedWithTheRange() {
        assertThatThrownBy(() -> read("flag: {probability: 1.2}"))
                .hasMessageContaining("line 1: flag.probability is 1.2, but must lie in 0.5 to 0.999");
    }

    @Test
    void whatIsNotYamlIsNamedWithItsLine() {
        assertThatThrownBy(() -> read("screen:\n  contact-gap: [0.1 m\nteam: x"))
                .isInstanceOf(StandardsException.class)
                .hasMessageContaining("not YAML");
        assertThatThrownBy(() -> read("- a\n- b"))
                .hasMessageContaining("line 1: the file must hold 'key: value' lines");
        assertThatThrownBy(() -> read("team: a\nteam: b")).hasMessageContaining("line 2: 'team' stands twice");
        assertThatThrownBy(() -> read("spacing:\n  crowded-distance: wide"))
                .hasMessageContaining("line 2: spacing.crowded-distance is not a number with a unit");
    }
}
