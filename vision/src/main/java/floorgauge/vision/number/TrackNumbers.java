package floorgauge.vision.number;

import floorgauge.court.track.JerseyReading;
import floorgauge.vision.network.NumberBelief;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The number that the looks at one track agree on. A look's likelihood under the number n is, up to a factor that is the same
 * for all n, {@code 100 p(n) + p(none)}: the reader was taught with numbers that are equally frequent, and a look at which
 * nothing is legible says nothing. Under "wears no number" it is {@code p(none)} over the share of drawings without one. Some
 * looks are at someone else, who passes by, or at half a number, so every look is worth nothing with a set probability; and
 * looks shortly after one another see the same fold of the same shirt, so that each counts as a part of one.
 */
public final class TrackNumbers {

    /** A reading that is right less often than this is not worth a coach's glance. */
    public static final double LEAST_PROBABILITY = 0.8;

    /** Share of looks that are at something else. */
    private static final double ASTRAY = 0.15;

    /** What a look adds to those before it, 0 to 1. */
    private static final double WORTH = 0.5;

    /** Share of the reader's drawings on which nothing was legible. */
    private static final double TAUGHT_NONE = 0.5;

    /**
     * Share of tracks on which all looks are wrong alike, however many they are: a cut of digit that the reader takes for another,
     * half of a number that is turned away throughout (on the sample clips 2 of 30; rounded up).
     */
    private static final double WRONG_ALIKE = 0.08;

    /** Practice shirts without a number are common. */
    private static final double WEARS_NONE = 0.3;

    /** Of the numbers 0 to 99, and last of none. */
    private static final double[] LOG_PRIOR = prior();

    private static double[] prior() {
        double[] logs = new double[NumberBelief.NUMBERS + 1];
        Arrays.fill(logs, Math.log((1 - WEARS_NONE) / NumberBelief.NUMBERS));
        logs[NumberBelief.NUMBERS] = Math.log(WEARS_NONE);
        return logs;
    }

    private TrackNumbers() {}

    /**
     * The likeliest number.
     *
     * @param looks of one track, in any order
     * @return empty where no number is likely enough, {@value #LEAST_PROBABILITY}
     */
    public static Optional<JerseyReading> agreed(List<NumberBelief> looks) {
        double[] logs = likelihoods(looks);
        for (int n = 0; n < logs.length; n++) {
            logs[n] += LOG_PRIOR[n];
        }
        return likeliest(logs).filter(r -> r.probability() >= LEAST_PROBABILITY);
    }

    /**
     * What a stretch of looks says on each number. Either of two stretches may be wrong alike throughout, and then says nothing, so
     * that what they say together is bounded. That nothing is legible, as from the side, is no evidence of a bare shirt here.
     */
    public static final class Shares {

        /** How much likelier each number became by the looks; 1 where they say nothing. */
        private final double[] shares;

        private Shares(double[] shares) {
            this.shares = shares;
        }

        /** Of looks in any order. */
        public static Shares of(List<NumberBelief> looks) {
            double[] logs = Arrays.copyOf(likelihoods(looks), NumberBelief.NUMBERS);
            double mean = logSum(logs) - Math.log(NumberBelief.NUMBERS);
            return new Shares(Arrays.stream(logs)
                    .map(log -> (1 - WRONG_ALIKE) * Math.exp(log - mean) + WRONG_ALIKE)
                    .toArray());
        }

        /** Logarithm of p(looks | one person) over p(looks | two persons); 0 where nothing is legible in one of the two. */
        public double logRatio(Shares other) {
            double both = 0;
            for (int n = 0; n < NumberBelief.NUMBERS; n++) {
                both += shares[n] * other.shares[n] / NumberBelief.NUMBERS;
            }
            return Math.log(both);
        }
    }

    /** Logarithms of the looks' likelihoods under each number, and last under none. */
    private static double[] likelihoods(List<NumberBelief> looks) {
        double[] logs = new double[NumberBelief.NUMBERS + 1];
        for (NumberBelief look : looks) {
            for (int n = 0; n < NumberBelief.NUMBERS; n++) {
                logs[n] += worth(NumberBelief.NUMBERS * look.of(n) + look.none());
            }
            logs[NumberBelief.NUMBERS] += worth(look.none() / TAUGHT_NONE);
        }
        return logs;
    }

    private static double logSum(double[] logs) {
        double most = Arrays.stream(logs).max().orElseThrow();
        double sum = 0;
        for (double log : logs) {
            sum += Math.exp(log - most);
        }
        return most + Math.log(sum);
    }

    private static double worth(double likelihood) {
        return WORTH * Math.log((1 - ASTRAY) * likelihood + ASTRAY);
    }

    private static Optional<JerseyReading> likeliest(double[] logs) {
        int best = 0;
        for (int n = 1; n < logs.length; n++) {
            if (logs[n] > logs[best]) {
                best = n;
            }
        }
        return best == NumberBelief.NUMBERS
                ? Optional.empty()
                : Optional.of(new JerseyReading(best, (1 - WRONG_ALIKE) * Math.exp(logs[best] - logSum(logs))));
    }
}
