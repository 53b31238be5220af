package floorgauge.eval.statistics;

import java.util.Objects;

/**
 * The second of two runs less the first, over the same clips.
 *
 * @param difference NaN where it is not defined
 * @param interval by resampling clips
 * @param clips how many clips it rests on
 */
public record PairedDifference(double difference, Interval interval, int clips) {

    public PairedDifference {
        Objects.requireNonNull(interval, "interval");
    }

    /** Whether the interval leaves out zero: the difference is more than noise between clips. */
    public boolean beyondNoise() {
        return interval.known() && !interval.contains(0);
    }
}
