package floorgauge.eval.statistics;

import org.hipparchus.stat.interval.BinomialProportion;
import org.hipparchus.stat.interval.ConfidenceInterval;

/**
 * The score interval of a share (Wilson, 1927, "Probable inference, the law of succession, and statistical inference", JASA
 * 22): stays within 0 to 1 and means something for few trials.
 */
public final class WilsonInterval {

    private WilsonInterval() {}

    /** @param trials at least {@code successes}; 0 gives an unknown interval */
    public static Interval of(long successes, long trials, double confidence) {
        if (successes < 0 || trials < successes) {
            throw new IllegalArgumentException(successes + " successes in " + trials + " trials");
        }
        Interval.requireConfidence(confidence);
        if (trials == 0) {
            return Interval.unknown(confidence);
        }
        ConfidenceInterval interval = BinomialProportion.getWilsonScoreInterval(
                Math.toIntExact(trials), (double) successes / trials, confidence);
        // Rounding must not lift an end off 0 or 1.
        return new Interval(
                successes == 0 ? 0 : interval.getLowerBound(),
                successes == trials ? 1 : interval.getUpperBound(),
                confidence);
    }
}
