package floorgauge.events.screen;

import floorgauge.events.statistics.Normal;

/**
 * A number with its error.
 *
 * @param value SI
 * @param error one standard deviation, at least 0
 */
public record Estimate(double value, double error) {

    /** Probability that the true value is at most a limit. */
    public double probabilityAtMost(double limit) {
        return Normal.atMost(limit, value, error);
    }
}
