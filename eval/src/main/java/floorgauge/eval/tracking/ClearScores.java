package floorgauge.eval.tracking;

import floorgauge.eval.statistics.Ratios;

/**
 * The CLEAR scores (Bernardin and Stiefelhagen, 2008), as sums over the log of a {@link ClearMatching}. Scores of several
 * clips add up: {@link #plus}.
 *
 * @param frames frames compared
 * @param matches pairs without a switch
 * @param switches pairs with another identity than the truth's last one (IDSW)
 * @param misses truths without a result (FN)
 * @param falseAlarms results without a truth (FP)
 * @param fragments times a truth was found again after being there and missed
 * @param mostlyTracked identities found in more than 0.8 of their frames
 * @param partlyTracked identities found in 0.2 to 0.8 of their frames
 * @param mostlyLost identities found in less than 0.2 of their frames
 * @param similaritySum over all pairs
 */
public record ClearScores(
        long frames,
        long matches,
        long switches,
        long misses,
        long falseAlarms,
        long fragments,
        long mostlyTracked,
        long partlyTracked,
        long mostlyLost,
        double similaritySum) {

    private static final double MOSTLY_TRACKED_ABOVE = 0.8;
    private static final double MOSTLY_LOST_BELOW = 0.2;

    /** Nothing compared: the neutral element of {@link #plus}. */
    public static final ClearScores NONE = new ClearScores(0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    /** Sums up the log of a {@link ClearMatching}. */
    public static ClearScores of(EventLog log) {
        Sum sum = new Sum(log.truthCount());
        for (int i = 0; i < log.size(); i++) {
            sum.add(log, i);
        }
        return sum.scores(log.frameCount());
    }

    /** Truths and results brought together (TP). */
    public long pairs() {
        return matches + switches;
    }

    /** Truths, over all frames. */
    public long truths() {
        return pairs() + misses;
    }

    /** Results, over all frames. */
    public long results() {
        return pairs() + falseAlarms;
    }

    /** Multiple object tracking accuracy, {@code 1 - (misses + false alarms + switches) / truths}, at most 1, NaN without truth. */
    public double mota() {
        return 1 - Ratios.of(misses + falseAlarms + switches, truths());
    }

    /** Multiple object tracking precision: the mean similarity of the pairs, 0 to 1, NaN without a pair. */
    public double motp() {
        return Ratios.of(similaritySum, pairs());
    }

    /** Share of truths that were found, 0 to 1, NaN without truth. */
    public double recall() {
        return Ratios.of(pairs(), truths());
    }

    /** Share of results that are true, 0 to 1, NaN without a result. */
    public double precision() {
        return Ratios.of(pairs(), results());
    }

    /** The scores of two clips together. */
    public ClearScores plus(ClearScores other) {
        return new ClearScores(
                frames + other.frames,
                matches + other.matches,
                switches + other.switches,
                misses + other.misses,
                falseAlarms + other.falseAlarms,
                fragments + other.fragments,
                mostlyTracked + other.mostlyTracked,
                partlyTracked + other.partlyTracked,
                mostlyLost + other.mostlyLost,
                similaritySum + other.similaritySum);
    }

    /** Running sums over a log. */
    private static final class Sum {
        private final long[] kinds = new long[TrackingEventKind.values().length];
        private final long[] present;
        private final long[] found;
        private final boolean[] lostSinceFound;
        private long fragments;
        private double similaritySum;

        Sum(int truths) {
            present = new long[truths];
            found = new long[truths];
            lostSinceFound = new boolean[truths];
        }

        void add(EventLog log, int index) {
            TrackingEventKind kind = log.kind(index);
            kinds[kind.ordinal()]++;
            if (kind == TrackingEventKind.FALSE_ALARM) {
                return;
            }
            int truth = log.truth(index);
            present[truth]++;
            if (kind.paired()) {
                addPair(truth, log.similarity(index));
            } else {
                lostSinceFound[truth] = found[truth] > 0;
            }
        }

        private void addPair(int truth, double similarity) {
            found[truth]++;
            similaritySum += similarity;
            if (lostSinceFound[truth]) {
                fragments++;
                lostSinceFound[truth] = false;
            }
        }

        ClearScores scores(long frames) {
            long mostlyTracked = 0;
            long mostlyLost = 0;
            for (int truth = 0; truth < present.length; truth++) {
                double share = (double) found[truth] / present[truth];
                mostlyTracked += share > MOSTLY_TRACKED_ABOVE ? 1 : 0;
                mostlyLost += share < MOSTLY_LOST_BELOW ? 1 : 0;
            }
            return new ClearScores(
                    frames,
                    kinds[TrackingEventKind.MATCH.ordinal()],
                    kinds[TrackingEventKind.SWITCH.ordinal()],
                    kinds[TrackingEventKind.MISS.ordinal()],
                    kinds[TrackingEventKind.FALSE_ALARM.ordinal()],
                    fragments,
                    mostlyTracked,
                    present.length - mostlyTracked - mostlyLost,
                    mostlyLost,
                    similaritySum);
        }
    }
}
