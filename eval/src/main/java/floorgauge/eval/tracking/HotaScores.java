package floorgauge.eval.tracking;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * HOTA (Luiten and others, 2021) and its parts, as sums over the log of a {@link HotaMatching}: a curve over the
 * localisation thresholds 0.05 to 0.95 in steps of 0.05, and its means.
 *
 * @param curve in ascending order of threshold
 */
public record HotaScores(List<HotaPoint> curve) {

    private static final int THRESHOLDS = 19;
    private static final double STEP = 0.05;

    public HotaScores {
        curve = List.copyOf(curve);
        if (curve.isEmpty()) {
            throw new IllegalArgumentException("a curve has at least one point");
        }
    }

    /** Nothing compared: the neutral element of {@link #plus}. */
    public static HotaScores none() {
        List<HotaPoint> curve = new ArrayList<>();
        for (int i = 0; i < THRESHOLDS; i++) {
            curve.add(new HotaPoint(alpha(i), 0, 0, 0, 0, 0, 0, 0));
        }
        return new HotaScores(curve);
    }

    /** Sums up the log of a {@link HotaMatching}. */
    public static HotaScores of(EventLog log) {
        return new HotaScores(new Sum(log).curve());
    }

    /** Mean of HOTA over the curve. */
    public double hota() {
        return mean(HotaPoint::hota);
    }

    /** DetA, mean over the curve. */
    public double detectionAccuracy() {
        return mean(HotaPoint::detectionAccuracy);
    }

    /** AssA, mean over the curve. */
    public double associationAccuracy() {
        return mean(HotaPoint::associationAccuracy);
    }

    /** LocA, mean over the curve. */
    public double localisationAccuracy() {
        return mean(HotaPoint::localisationAccuracy);
    }

    /** Mean of any part over the curve. */
    public double mean(ToDoubleFunction<HotaPoint> part) {
        return curve.stream().mapToDouble(part).sum() / curve.size();
    }

    /** The scores of two clips together. */
    public HotaScores plus(HotaScores other) {
        List<HotaPoint> sum = new ArrayList<>();
        for (int i = 0; i < curve.size(); i++) {
            sum.add(curve.get(i).plus(other.curve.get(i)));
        }
        return new HotaScores(sum);
    }

    private static double alpha(int index) {
        return STEP * (index + 1);
    }

    /** Sums over a log, one pass. */
    private static final class Sum {
        private final long[] truthFrames;
        private final long[] resultFrames;
        private final long[] pairsAt = new long[THRESHOLDS];
        private final double[] similarityAt = new double[THRESHOLDS];
        /** By pair of identities: number of pairs at or above each threshold. */
        private final Map<Long, long[]> togetherAt = new LinkedHashMap<>();

        private long truths;
        private long results;

        Sum(EventLog log) {
            truthFrames = new long[log.truthCount()];
            resultFrames = new long[log.resultCount()];
            for (int i = 0; i < log.size(); i++) {
                add(log, i);
            }
        }

        private void add(EventLog log, int index) {
            TrackingEventKind kind = log.kind(index);
            if (kind != TrackingEventKind.FALSE_ALARM) {
                truths++;
                truthFrames[log.truth(index)]++;
            }
            if (kind != TrackingEventKind.MISS) {
                results++;
                resultFrames[log.result(index)]++;
            }
            if (kind.paired()) {
                addPair(log.truth(index), log.result(index), log.similarity(index));
            }
        }

        private void addPair(int truth, int result, double similarity) {
            long key = ((long) truth << Integer.SIZE) | result;
            long[] together = togetherAt.computeIfAbsent(key, k -> new long[THRESHOLDS]);
            for (int i = 0; i < THRESHOLDS && similarity >= alpha(i) - Matching.ROUNDING; i++) {
                together[i]++;
                pairsAt[i]++;
                similarityAt[i] += similarity;
            }
        }

        List<HotaPoint> curve() {
            List<HotaPoint> curve = new ArrayList<>();
            for (int i = 0; i < THRESHOLDS; i++) {
                curve.add(point(i));
            }
            return curve;
        }

        private HotaPoint point(int i) {
            double association = 0;
            double recall = 0;
            double precision = 0;
            for (Map.Entry<Long, long[]> entry : togetherAt.entrySet()) {
                double n = entry.getValue()[i];
                double inTruth = truthFrames[(int) (entry.getKey() >> Integer.SIZE)];
                double inResult = resultFrames[(int) (long) entry.getKey()];
                association += n * n / (inTruth + inResult - n);
                recall += n * n / inTruth;
                precision += n * n / inResult;
            }
            return new HotaPoint(
                    alpha(i),
                    pairsAt[i],
                    truths - pairsAt[i],
                    results - pairsAt[i],
                    association,
                    recall,
                    precision,
                    similarityAt[i]);
        }
    }
}
