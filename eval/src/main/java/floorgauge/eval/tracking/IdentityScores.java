package floorgauge.eval.tracking;

import floorgauge.eval.statistics.Ratios;

/**
 * The identity scores (Ristani and others, 2016), as sums over the log of an {@link IdentityMatching}. Scores of several
 * clips add up: {@link #plus}.
 *
 * @param truePositives sightings matched with their partner (IDTP)
 * @param misses truths without their partner (IDFN)
 * @param falseAlarms results without their partner (IDFP)
 */
public record IdentityScores(long truePositives, long misses, long falseAlarms) {

    /** Nothing compared: the neutral element of {@link #plus}. */
    public static final IdentityScores NONE = new IdentityScores(0, 0, 0);

    /** Sums up the log of an {@link IdentityMatching}. */
    public static IdentityScores of(EventLog log) {
        long[] kinds = new long[TrackingEventKind.values().length];
        for (int i = 0; i < log.size(); i++) {
            kinds[log.kind(i).ordinal()]++;
        }
        return new IdentityScores(
                kinds[TrackingEventKind.MATCH.ordinal()],
                kinds[TrackingEventKind.MISS.ordinal()],
                kinds[TrackingEventKind.FALSE_ALARM.ordinal()]);
    }

    /** {@code 2 IDTP / (2 IDTP + IDFN + IDFP)}, 0 to 1, NaN where both truth and result are empty. */
    public double idf1() {
        return Ratios.of(2 * truePositives, 2 * truePositives + misses + falseAlarms);
    }

    /** Share of results with their partner, 0 to 1, NaN without a result. */
    public double idPrecision() {
        return Ratios.of(truePositives, truePositives + falseAlarms);
    }

    /** Share of truths with their partner, 0 to 1, NaN without truth. */
    public double idRecall() {
        return Ratios.of(truePositives, truePositives + misses);
    }

    /** The scores of two clips together. */
    public IdentityScores plus(IdentityScores other) {
        return new IdentityScores(
                truePositives + other.truePositives, misses + other.misses, falseAlarms + other.falseAlarms);
    }
}
