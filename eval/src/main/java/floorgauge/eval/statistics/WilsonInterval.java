package floorgauge.eval.statistics;

import org.hipparchus.distribution.continuous.NormalDistribution;

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
        double z = new NormalDistribution().inverseCumulativeProbability((1 + confidence) / 2);
        double n = trials;
        double share = successes / n;
        double centre = share + z * z / (2 * n);
        double spread = z * Math.sqrt(share * (1 - share) / n + z * z / (4 * n * n));
        double scale = 1 + z * z / n;
        return new Interval(Math.max(0, (centre - spread) / scale), Math.min(1, (centre + spread) / scale), confidence);
    }
}
