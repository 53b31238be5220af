package floorgauge.events.trend;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What is known of one subject's figure.
 *
 * @param subject whose, and of what
 * @param count of observations, at least 1
 * @param possessions in which they were made
 * @param firstDay of the first
 * @param lastDay of the last
 * @param mean of the values
 * @param meanInterval by resampling possessions; empty below two possessions
 * @param shrunkMean the mean drawn toward that of the team, the more the fewer the observations
 * @param shrunkInterval of the shrunk mean; empty where nobody has the two possessions that tell how values vary
 * @param teamMean of all subjects with this role, kind and figure
 * @param slope change over the weeks; empty where all observations are of one day
 */
public record Trend(
        TrendSubject subject,
        int count,
        int possessions,
        LocalDate firstDay,
        LocalDate lastDay,
        double mean,
        Optional<Interval> meanInterval,
        double shrunkMean,
        Optional<Interval> shrunkInterval,
        double teamMean,
        Optional<Slope> slope) {

    public Trend {
        Objects.requireNonNull(subject, "subject");
        Objects.requireNonNull(firstDay, "firstDay");
        Objects.requireNonNull(lastDay, "lastDay");
        Objects.requireNonNull(meanInterval, "meanInterval");
        Objects.requireNonNull(shrunkInterval, "shrunkInterval");
        Objects.requireNonNull(slope, "slope");
        if (count < 1 || possessions < 1 || possessions > count) {
            throw new IllegalArgumentException("counts of " + count + " in " + possessions + " possessions");
        }
    }

    /** Up, down, or no trend: a trend is called only where the slope's interval leaves out zero. */
    public Direction direction() {
        return slope.map(Slope::direction).orElse(Direction.NONE);
    }

    /** Which way a figure goes. */
    public enum Direction {
        UP("up"),
        DOWN("down"),
        NONE("no trend");

        private final String words;

        Direction(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
