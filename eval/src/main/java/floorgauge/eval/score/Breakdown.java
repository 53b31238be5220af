package floorgauge.eval.score;

import floorgauge.eval.statistics.Estimate;
import java.util.Objects;

/**
 * A measure over the films that share a condition.
 *
 * @param condition such as rules, scenario, court status
 * @param value such as fiba
 * @param measure what it is about
 * @param result with an interval by resampling those films
 */
public record Breakdown(String condition, String value, Measure measure, Estimate result) {

    public Breakdown {
        Objects.requireNonNull(condition, "condition");
        Objects.requireNonNull(value, "value");
        Objects.requireNonNull(measure, "measure");
        Objects.requireNonNull(result, "result");
    }
}
