package floorgauge.eval.tracking;

import java.util.Objects;

/**
 * All scores of one result against one truth. Scores of several clips add up: {@link #plus}.
 *
 * @param hota higher order tracking accuracy and its parts
 * @param clear CLEAR scores
 * @param identity identity scores
 */
public record TrackingScores(HotaScores hota, ClearScores clear, IdentityScores identity) {

    public TrackingScores {
        Objects.requireNonNull(hota, "hota");
        Objects.requireNonNull(clear, "clear");
        Objects.requireNonNull(identity, "identity");
    }

    /** Nothing compared: the neutral element of {@link #plus}. */
    public static TrackingScores none() {
        return new TrackingScores(HotaScores.none(), ClearScores.NONE, IdentityScores.NONE);
    }

    /** Scores with the usual threshold of 0.5 for CLEAR and identity. */
    public static <T> TrackingScores of(
            TrackSequence<T> truth, TrackSequence<T> result, Similarity<? super T> similarity) {
        return of(SimilarityTable.of(truth, result, similarity), Matching.DEFAULT_THRESHOLD);
    }

    /** @param threshold least similarity of a pair for CLEAR and identity, above 0 and at most 1 */
    public static TrackingScores of(SimilarityTable table, double threshold) {
        return new TrackingScores(
                HotaScores.of(new HotaMatching().match(table)),
                ClearScores.of(new ClearMatching(threshold).match(table)),
                IdentityScores.of(new IdentityMatching(threshold).match(table)));
    }

    /** The scores of two clips together. */
    public TrackingScores plus(TrackingScores other) {
        return new TrackingScores(hota.plus(other.hota), clear.plus(other.clear), identity.plus(other.identity));
    }
}
