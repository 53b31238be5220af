package floorgauge.eval.baseline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import floorgauge.eval.score.Comparison;
import floorgauge.eval.score.ErrorRow;
import floorgauge.eval.score.Measure;
import floorgauge.eval.score.RunSummary;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.net.URISyntaxException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Holds the measurement of events against the committed run, {@code scenarios.json}. Where a worse result is meant, {@code
 * eval/baseline} writes the file anew, and the change of the file shows what was given up.
 */
class ScenarioBaselineTest {

    private static RunSummary committed;

    @BeforeAll
    static void read() throws URISyntaxException {
        committed = RunSummary.read(
                Path.of(ScenarioBaselineTest.class.getResource("scenarios.json").toURI()));
    }

    @Test
    void nothingGotWorseBeyondNoise() {
        RunSummary now = ScenarioBaseline.measure(Standards.defaults());
        assertThat(now.films()).hasSizeGreaterThan(50);
        Comparison comparison = ScenarioBaseline.compare(committed, now);
        if (!comparison.worse().isEmpty()) {
            fail("The measurement of events got worse than the committed run:\n" + comparison.worseInWords()
                    + "Mend it, or write the run anew with eval/baseline and say why in the commit.");
        }
    }

    /** What the gate is for: where only a user at full sprint counts, screens are missed, and their rows say so. */
    @Test
    void aWorseMeasurementIsToldWithItsRows() {
        Standards deaf = Standards.defaults().with(Setting.SCREEN_USER_SPEED, Setting.SCREEN_USER_SPEED.most());
        Comparison comparison = ScenarioBaseline.compare(committed, ScenarioBaseline.measure(deaf));
        assertThat(comparison.worse())
                .extracting(Comparison.Line::measure)
                .contains(Measure.share("event, screen", "recall"));
        assertThat(comparison.worseRows()).extracting(ErrorRow::problem).contains("missed");
        assertThat(comparison.worseInWords())
                .contains("worse   event, screen: recall")
                .contains("screen, missed: expected")
                .contains("floorgauge render ");
    }
}
