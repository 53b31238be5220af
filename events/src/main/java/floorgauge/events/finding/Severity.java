package floorgauge.events.finding;

import java.util.Objects;

/**
 * What a missed standard cost.
 *
 * @param level 0 to 1, for ordering a sheet
 * @param cost the separation or the time it stands for
 */
public record Severity(double level, Figure cost) {

    public Severity {
        Objects.requireNonNull(cost, "cost");
        if (!(level >= 0 && level <= 1)) {
            throw new IllegalArgumentException("severity lies in 0 to 1: " + level);
        }
    }
}
