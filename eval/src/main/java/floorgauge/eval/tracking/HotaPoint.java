package floorgauge.eval.tracking;

import floorgauge.eval.statistics.Ratios;

/**
 * HOTA's sums at one localisation threshold. Sums of several clips add up: {@link #plus}.
 *
 * @param alpha the threshold: pairs of at least this similarity are true
 * @param truePositives pairs at or above the threshold
 * @param misses truths without such a pair
 * @param falseAlarms results without such a pair
 * @param associationSum over true pairs, the Jaccard index of the two identities' frames
 * @param associationRecallSum over true pairs, the share of the truth's frames that are true pairs of the two identities
 * @param associationPrecisionSum over true pairs, the share of the result's frames that are
 * @param similaritySum over true pairs
 */
public record HotaPoint(
        double alpha,
        long truePositives,
        long misses,
        long falseAlarms,
        double associationSum,
        double associationRecallSum,
        double associationPrecisionSum,
        double similaritySum) {

    /** {@code sqrt(DetA AssA)}, 0 to 1, NaN where both truth and result are empty. */
    public double hota() {
        return Math.sqrt(detectionAccuracy() * associationAccuracy());
    }

    /** DetA, {@code TP / (TP + FN + FP)}, NaN where both truth and result are empty. */
    public double detectionAccuracy() {
        return Ratios.of(truePositives, truePositives + misses + falseAlarms);
    }

    /** DetRe, NaN without truth. */
    public double detectionRecall() {
        return Ratios.of(truePositives, truePositives + misses);
    }

    /** DetPr, NaN without a result. */
    public double detectionPrecision() {
        return Ratios.of(truePositives, truePositives + falseAlarms);
    }

    /** AssA, 0 to 1; 0 without a true pair, as in the reference implementation, so that the mean over thresholds is defined. */
    public double associationAccuracy() {
        return associationSum / Math.max(1, truePositives);
    }

    /** AssRe, 0 to 1; 0 without a true pair. */
    public double associationRecall() {
        return associationRecallSum / Math.max(1, truePositives);
    }

    /** AssPr, 0 to 1; 0 without a true pair. */
    public double associationPrecision() {
        return associationPrecisionSum / Math.max(1, truePositives);
    }

    /** LocA, the mean similarity of true pairs; 1 without one, as in the reference implementation: nothing was misplaced. */
    public double localisationAccuracy() {
        return truePositives == 0 ? 1 : similaritySum / truePositives;
    }

    /** The sums of two clips together. */
    public HotaPoint plus(HotaPoint other) {
        if (alpha != other.alpha) {
            throw new IllegalArgumentException("thresholds differ: " + alpha + " and " + other.alpha);
        }
        return new HotaPoint(
                alpha,
                truePositives + other.truePositives,
                misses + other.misses,
                falseAlarms + other.falseAlarms,
                associationSum + other.associationSum,
                associationRecallSum + other.associationRecallSum,
                associationPrecisionSum + other.associationPrecisionSum,
                similaritySum + other.similaritySum);
    }
}
