package floorgauge.eval.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class CardOptionsTest {

    @Test
    void everyFilmUnlessSaidOtherwise() {
        CardOptions options = CardOptions.of(new String[] {"card.md", "2026-01-02", "work"});
        assertThat(options.films()).isEqualTo(HeldOutFilms.ALL.size());
        assertThat(options.gym()).isEmpty();
        assertThat(options.command()).isEqualTo("eval/score-card");
    }

    @Test
    void theCommandTellsWhatWasRunButNoOnesFolder() {
        CardOptions options =
                CardOptions.of(new String[] {"card.md", "2026-01-02", "work", "--films", "0", "--gym", "/home/a/gym"});
        assertThat(options.films()).isZero();
        assertThat(options.gym()).contains(Path.of("/home/a/gym"));
        assertThat(options.command()).isEqualTo("eval/score-card --films 0 --gym FOLDER");
    }

    @Test
    void refusesOthers() {
        for (String[] wrong : new String[][] {
            {}, {"a", "b"}, {"a", "b", "c", "--films"}, {"a", "b", "c", "--films", "-1"}, {"a", "b", "c", "--all", "1"}
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
