package floorgauge.eval.card;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardTest {

    private static final String DAY = "2026-01-02";

    @TempDir
    private Path folder;

    @Test
    void aCardThatIsNotThereSaysHowEachPartIsMade() throws IOException {
        Card none = Card.read(folder.resolve("card.md"));
        assertThat(none.parts()).isEmpty();
        assertThat(none.text())
                .contains("## On real film\n\nNot measured yet: `eval/score-card --only gym --gym FOLDER` does so.")
                .contains("`eval/score-card --only films`")
                .contains("`eval/score-card --only scenes`");
    }

    @Test
    void aPartThatIsMadeAgainLeavesTheOthersAsTheyWere() throws IOException {
        Path file = folder.resolve("card.md");
        new Card(Map.of())
                .with(CardPart.SCENES, DAY, "one", "### Events\n\n| a |\n")
                .with(CardPart.FILMS, DAY, "two", "### Court\n\n| b |\n\n### Ball\n\n| c |")
                .write(file);
        Card read = Card.read(file);
        assertThat(read.parts()).containsOnlyKeys(CardPart.FILMS, CardPart.SCENES);
        assertThat(read.text()).isEqualTo(Files.readString(file));
        read.with(CardPart.SCENES, "2026-03-04", "three", "### Events\n\n| d |").write(file);
        assertThat(Files.readString(file))
                .contains("Made on 2026-01-02 by `two`.\n\n### Court\n\n| b |\n\n### Ball\n\n| c |\n")
                .contains("Made on 2026-03-04 by `three`.\n\n### Events\n\n| d |\n")
                .contains("Not measured yet: `eval/score-card --only gym --gym FOLDER`")
                .doesNotContain("| a |");
        assertThat(folder.toFile().list()).containsExactly("card.md");
    }

    /** The committed card can be read, so that one of its parts can be made again. */
    @Test
    void theCommittedCardHasEveryPart() throws IOException {
        Path committed = Path.of(System.getProperty("floorgauge.root", ".."), "docs", "score-card.md");
        Card card = Card.read(committed);
        assertThat(card.parts()).containsOnlyKeys(CardPart.values());
        assertThat(card.text()).isEqualTo(Files.readString(committed));
    }
}
