package floorgauge.app.export;

import floorgauge.events.finding.Finding;
import java.util.Objects;

/**
 * A finding that is exported.
 *
 * @param number of the finding on its film, from 1, as on the sheet
 * @param possession number of the possession on the film, from 1
 * @param finding what was measured
 */
public record ChosenFinding(int number, int possession, Finding finding) {

    public ChosenFinding {
        Objects.requireNonNull(finding, "finding");
        if (number < 1 || possession < 1) {
            throw new IllegalArgumentException("findings and possessions count from 1: " + number + ", " + possession);
        }
    }

    /** The same in another sentence. */
    ChosenFinding saying(String sentence) {
        return new ChosenFinding(number, possession, finding.saying(sentence));
    }
}
