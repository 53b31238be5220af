package floorgauge.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.track.Appearance;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.Team;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class SuggestionTest {

    private static final int BLUE = 0x2B3577;
    private static final int NEARLY_BLUE = 0x2D3779;
    private static final int RED = 0x9C2A22;

    private static final Player QUILL = player("quill", 31);
    private static final Player VOSS = player("voss", 33);
    private static final List<Player> BOTH = List.of(QUILL, VOSS);

    private static Player player(String id, int number) {
        return new Player(id, id, OptionalInt.of(number), "", "", true);
    }

    private static StoredTrack track(int id, double from, double to, Appearance appearance, Player player) {
        return new StoredTrack(id, Team.FIRST, 1, from, to, appearance, Optional.ofNullable(player));
    }

    private static Appearance number(int number) {
        return new Appearance(Optional.of(new JerseyReading(number, 0.8)), OptionalInt.empty());
    }

    private static Appearance shirt(int rgb) {
        return new Appearance(Optional.empty(), OptionalInt.of(rgb));
    }

    @Test
    void nothingIsSuggestedWhereNothingTells() {
        assertThat(Suggestion.of(List.of(), BOTH)).isEmpty();
        assertThat(Suggestion.of(List.of(track(1, 0, 9, Appearance.UNSEEN, null)), BOTH))
                .isEmpty();
        assertThat(Suggestion.of(List.of(track(1, 0, 9, number(7), null)), BOTH))
                .isEmpty();
        assertThat(Suggestion.of(List.of(track(1, 0, 9, number(31), null)), List.of()))
                .isEmpty();
        assertThat(Suggestion.of(List.of(track(1, 0, 9, number(31), VOSS)), BOTH))
                .isEmpty();
    }

    @Test
    void theNumberTells() {
        assertThat(Suggestion.of(List.of(track(1, 0, 9, number(31), null)), BOTH))
                .isEqualTo(Map.of(1, new Suggestion(QUILL, true)));
    }

    @Test
    void oneNumberOnTwoPlayersTellsNobody() {
        List<Player> twice = List.of(QUILL, player("other", 31));
        assertThat(Suggestion.of(List.of(track(1, 0, 9, number(31), null)), twice))
                .isEmpty();
        StoredTrack other = track(2, 3, 6, Appearance.UNSEEN, twice.get(1));
        assertThat(Suggestion.of(List.of(track(1, 0, 9, number(31), null), other), twice))
                .as("the other was in view elsewhere")
                .isEqualTo(Map.of(1, new Suggestion(QUILL, true)));
    }

    @Test
    void whoIsElsewhereOrWearsTheOtherKitIsNotSuggested() {
        StoredTrack open = track(1, 0, 9, number(31), null);
        assertThat(Suggestion.of(List.of(open, track(2, 4, 12, Appearance.UNSEEN, QUILL)), BOTH))
                .isEmpty();
        StoredTrack later = track(2, 9.2, 12, Appearance.UNSEEN, QUILL);
        assertThat(Suggestion.of(List.of(open, later), BOTH)).containsKey(1);
        StoredTrack otherKit = new StoredTrack(2, Team.SECOND, 1, 10, 12, Appearance.UNSEEN, Optional.of(QUILL));
        assertThat(Suggestion.of(List.of(open, otherKit), BOTH)).isEmpty();
    }

    @Test
    void aShirtIsRememberedWhereNobodyElseWearsIt() {
        StoredTrack said = track(1, 0, 9, shirt(BLUE), QUILL);
        StoredTrack again = track(2, 12, 20, shirt(NEARLY_BLUE), null);
        assertThat(Suggestion.of(List.of(said, again), BOTH)).isEqualTo(Map.of(2, new Suggestion(QUILL, false)));
        StoredTrack red = track(3, 0, 9, shirt(RED), VOSS);
        assertThat(Suggestion.of(List.of(said, again, red), BOTH)).containsOnlyKeys(2);
        StoredTrack mate = track(3, 1, 8, shirt(BLUE), null);
        assertThat(Suggestion.of(List.of(said, again, mate), BOTH))
                .as("a team-mate in the same shirt was in view together with him")
                .isEmpty();
    }

    @Test
    void aNumberSpeaksAgainstAShirt() {
        StoredTrack said = track(1, 0, 9, shirt(BLUE), QUILL);
        Appearance numbered = new Appearance(Optional.of(new JerseyReading(4, 0.9)), OptionalInt.of(BLUE));
        assertThat(Suggestion.of(List.of(said, track(2, 12, 20, numbered, null)), BOTH))
                .isEmpty();
    }

    /** sRGB's red in CIE L*a*b* under D65, as published with the standard's matrix (Lindbloom, "RGB/XYZ matrices"). */
    @Test
    void coloursAreThoseOfTheCie() {
        ShirtColour red = ShirtColour.of(0xFF0000);
        assertThat(red.lightness()).isCloseTo(53.24, within(0.01));
        assertThat(red.a()).isCloseTo(80.09, within(0.02));
        assertThat(red.b()).isCloseTo(67.20, within(0.02));
        assertThat(ShirtColour.of(0xFFFFFF).lightness()).isCloseTo(100, within(0.01));
        assertThat(ShirtColour.of(0).differenceTo(ShirtColour.of(0xFFFFFF))).isCloseTo(100, within(0.05));
    }
}
