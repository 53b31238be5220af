package floorgauge.eval.score;

import floorgauge.eval.statistics.Estimate;
import java.util.Objects;
import java.util.Optional;

/**
 * One line of the score table.
 *
 * @param measure what it is about
 * @param result of the findings, with an interval by resampling films
 * @param ceiling what a second annotator reaches against the first; empty where no film has two
 * @param floor what a guesser reaches who does not look at the film; empty where there is none for this measure
 */
public record TableRow(Measure measure, Estimate result, Optional<Estimate> ceiling, Optional<Estimate> floor) {

    public TableRow {
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(result, "result");
        Objects.requireNonNull(ceiling, "ceiling");
        Objects.requireNonNull(floor, "floor");
    }
}
