package floorgauge.eval.statistics;

import floorgauge.eval.statistics.PrecisionRecallCurve.Candidate;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether "sure to 9 in 10" is right nine times in ten: candidates in bins of their probability, and in each how many were
 * real.
 *
 * @param bins ascending, of equal width, also empty ones
 * @param brier mean squared difference of probability and outcome (Brier, 1950), 0 to 1; NaN without candidates
 */
public record Reliability(List<Bin> bins, double brier) {

    /** The usual number of bins. */
    public static final int USUAL_BINS = 10;

    /**
     * One bin.
     *
     * @param from lower edge, inside
     * @param to upper edge, outside but for the last bin
     * @param count candidates in it
     * @param meanProbability theirs; NaN in an empty bin
     * @param realShare share of them that are real; NaN in an empty bin
     * @param interval of the real share
     */
    public record Bin(
            double from, double to, long count, double meanProbability, double realShare, Interval interval) {}

    public Reliability {
        bins = List.copyOf(bins);
    }

    public static Reliability of(List<Candidate> candidates, int binCount) {
        if (binCount < 1) {
            throw new IllegalArgumentException("at least one bin: " + binCount);
        }
        long[] counts = new long[binCount];
        long[] real = new long[binCount];
        double[] sums = new double[binCount];
        double squares = 0;
        for (Candidate candidate : candidates) {
            int bin = Math.min(binCount - 1, (int) (candidate.probability() * binCount));
            counts[bin]++;
            real[bin] += candidate.real() ? 1 : 0;
            sums[bin] += candidate.probability();
            double miss = candidate.probability() - (candidate.real() ? 1 : 0);
            squares += miss * miss;
        }
        List<Bin> bins = new ArrayList<>();
        for (int i = 0; i < binCount; i++) {
            bins.add(new Bin(
                    (double) i / binCount,
                    (i + 1.0) / binCount,
                    counts[i],
                    Ratios.of(sums[i], counts[i]),
                    Ratios.of(real[i], counts[i]),
                    WilsonInterval.of(real[i], counts[i], Interval.USUAL_CONFIDENCE)));
        }
        return new Reliability(bins, Ratios.of(squares, candidates.size()));
    }

    /** Mean over candidates of the gap between a bin's mean probability and its real share, 0 to 1; NaN without candidates. */
    public double calibrationError() {
        double gaps = 0;
        long count = 0;
        for (Bin bin : bins) {
            if (bin.count() > 0) {
                gaps += bin.count() * Math.abs(bin.meanProbability() - bin.realShare());
                count += bin.count();
            }
        }
        return Ratios.of(gaps, count);
    }
}
