package floorgauge.eval.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class CardOptionsTest {

    @Test
    void everyPartForWhichThereIsFilmUnlessSaidOtherwise() {
        CardOptions options = CardOptions.of(new String[] {"card.md", "2026-01-02", "work"});
        assertThat(options.films()).isEqualTo(HeldOutFilms.ALL.size());
        assertThat(options.gym()).isEmpty();
        assertThat(options.parts()).containsExactly(CardPart.FILMS, CardPart.SCENES);
        assertThat(CardOptions.of(new String[] {"card.md", "2026-01-02", "work", "--films", "0", "--gym", "gym"})
                        .parts())
                .containsExactly(CardPart.GYM, CardPart.SCENES);
    }

    @Test
    void theCommandTellsWhatWasRunButNoOnesFolder() {
        CardOptions options = CardOptions.of(new String[] {
            "card.md", "2026-01-02", "work", "--films", "1", "--gym", "/home/a/gym", "--only", "gym,films"
        });
        assertThat(options.gym()).contains(Path.of("/home/a/gym"));
        assertThat(options.parts()).containsExactly(CardPart.FILMS, CardPart.GYM);
        assertThat(options.commandOf(CardPart.FILMS)).isEqualTo("eval/score-card --only films --films 1");
        assertThat(options.commandOf(CardPart.GYM)).isEqualTo("eval/score-card --only gym --gym FOLDER");
    }

    @Test
    void refusesOthers() {
        for (String[] wrong : new String[][] {
            {},
            {"a", "b"},
            {"a", "b", "c", "--films"},
            {"a", "b", "c", "--films", "-1"},
            {"a", "b", "c", "--all", "1"},
            {"a", "b", "c", "--only", "gym"},
            {"a", "b", "c", "--only", "films", "--films", "0"},
            {"a", "b", "c", "--only", "scenes,"},
        }) {
            assertThatThrownBy(() -> CardOptions.of(wrong))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage(CardOptions.USAGE);
        }
    }

    /** Seeds from 9001 on are kept for the card. */
    @Test
    void theFilmsAreHeldOut() {
        assertThat(HeldOutFilms.ALL).allMatch(f -> f.seed() >= 9001);
    }
}
