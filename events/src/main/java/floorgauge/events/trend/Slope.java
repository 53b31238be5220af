package floorgauge.events.trend;

import java.util.Objects;
import java.util.Optional;

/**
 * Change over time.
 *
 * @param perWeek Theil-Sen slope, in the figure's unit a week
 * @param interval of the slope; empty where there are too few days for one
 * @param test whether there is a monotonic trend at all
 */
public record Slope(double perWeek, Optional<Interval> interval, MannKendall test) {

    public Slope {
        Objects.requireNonNull(interval, "interval");
        Objects.requireNonNull(test, "test");
    }

    /** A trend is called only where the interval leaves out zero. */
    public Trend.Direction direction() {
        if (interval.isEmpty() || interval.get().holds(0)) {
            return Trend.Direction.NONE;
        }
        return interval.get().low() > 0 ? Trend.Direction.UP : Trend.Direction.DOWN;
    }
}
