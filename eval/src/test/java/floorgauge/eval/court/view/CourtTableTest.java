package floorgauge.eval.court.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Courts found without a click on held-out views: few of them in an ordinary build, as many as the property
 * floorgauge.courtViews says, with the table in the build folder.
 */
class CourtTableTest {

    @Test
    void courtsAreFoundAndTheirErrorsHonest() throws IOException {
        int views = Integer.getInteger("floorgauge.courtViews", 4);
        CourtTable table = CourtTable.measure(CourtTable.HELD_OUT, views, Optional.empty());
        String text = table.markdown();
        Files.writeString(Files.createDirectories(Path.of("target")).resolve("court-table.md"), text);
        System.out.println(text);
        assertThat(table.outcomes()).hasSize(views);
        // A few views settle a share only roughly: one in four may be missed, none may be falsely good.
        assertThat(table.foundShare()).isGreaterThanOrEqualTo(views < 40 ? 0.75 : 0.95);
        assertThat(table.falseGoodShare()).isLessThanOrEqualTo(0.005);
        assertThat(table.errorQuantileMetres(0.5)).isLessThanOrEqualTo(0.05);
        assertThat(table.errorQuantileMetres(0.95)).isLessThanOrEqualTo(0.15);
        double honest = table.meanSquaredNormalisedError();
        assertThat(honest).isBetween(views < 40 ? 0.5 : 1.6, views < 40 ? 6 : 2.4);
    }

    @Test
    void aViewIsTheSameEveryTime() {
        CourtView first = CourtView.of(3);
        CourtView again = CourtView.of(3);
        assertThat(again.camera().position()).isEqualTo(first.camera().position());
        assertThat(again.gym()).isEqualTo(first.gym());
        assertThat(again.feet(2)).isEqualTo(first.feet(2));
    }

    @Test
    void viewsHoldWhatTheyPromise() {
        for (long seed = 1; seed <= 60; seed++) {
            CourtView view = CourtView.of(seed);
            assertThat(view.heightMetres()).as("seed %d", seed).isBetween(1.5, 10.0);
            assertThat(view.feet(3)).as("seed %d", seed).isNotEmpty();
        }
    }
}
