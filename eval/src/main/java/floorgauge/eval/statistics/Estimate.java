package floorgauge.eval.statistics;

import java.util.Objects;

/**
 * A figure with its interval.
 *
 * @param value of all clips together; NaN where it is not defined
 * @param interval by resampling clips
 * @param clips how many clips it rests on
 */
public record Estimate(double value, Interval interval, int clips) {

    public Estimate {
        Objects.requireNonNull(interval, "interval");
        if (clips < 0) {
            throw new IllegalArgumentException("a number of clips is at least 0: " + clips);
        }
    }
}
