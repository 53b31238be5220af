package floorgauge.events.trend;

/**
 * An interval that holds the true value with the confidence of the {@link TrendSettings} it was made with.
 *
 * @param low lower end
 * @param high upper end, at or above the lower
 */
public record Interval(double low, double high) {

    public Interval {
        if (!(high >= low)) {
            throw new IllegalArgumentException("an interval ends at or above its start: " + low + ", " + high);
        }
    }

    /** Whether a value lies in it, its ends counted. */
    public boolean holds(double value) {
        return value >= low && value <= high;
    }
}
