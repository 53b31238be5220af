package floorgauge.eval.tracking;

import java.util.Arrays;

/**
 * The matching of the CLEAR scores (Bernardin and Stiefelhagen, 2008, "Evaluating multiple object tracking performance: the
 * CLEAR MOT metrics", section 2.2): a pair of the frame before is kept while its similarity reaches the threshold; the rest
 * is paired for the greatest sum of similarities. A truth that is paired with another identity than at its last pair, however
 * long ago, is a switch.
 *
 * @param threshold least similarity of a pair, above 0 and at most 1
 */
public record ClearMatching(double threshold) implements Matching {

    /** Above any sum of similarities within a frame, so that keeping a pair always comes first. */
    private static final double KEEP = 1000;

    private static final int NOBODY = -1;

    public ClearMatching {
        Matching.requireThreshold(threshold);
    }

    /** With the usual threshold of 0.5. */
    public static ClearMatching usual() {
        return new ClearMatching(DEFAULT_THRESHOLD);
    }

    @Override
    public EventLog match(SimilarityTable table) {
        return new Run(table).log();
    }

    /** One pass over the frames. */
    private final class Run {
        private final SimilarityTable table;
        private final EventLog.Builder log;
        private final int[] lastResult;
        private int[] resultInFrameBefore;
        private int[] resultInThisFrame;

        Run(SimilarityTable table) {
            this.table = table;
            log = new EventLog.Builder(table);
            lastResult = nobody();
            resultInFrameBefore = nobody();
            resultInThisFrame = nobody();
        }

        private int[] nobody() {
            int[] results = new int[table.truthIds().size()];
            Arrays.fill(results, NOBODY);
            return results;
        }

        EventLog log() {
            for (int position = 0; position < table.frames().size(); position++) {
                FrameSimilarities frame = table.frames().get(position);
                FramePairing.pair(frame, position, (r, c) -> score(frame, r, c), this::kind, log);
                int[] before = resultInFrameBefore;
                resultInFrameBefore = resultInThisFrame;
                resultInThisFrame = before;
                Arrays.fill(resultInThisFrame, NOBODY);
            }
            return log.build();
        }

        private double score(FrameSimilarities frame, int row, int column) {
            double similarity = frame.similarity(row, column);
            if (similarity < threshold - ROUNDING) {
                return 0;
            }
            boolean kept = resultInFrameBefore[frame.truthIndex(row)] == frame.resultIndex(column);
            return similarity + (kept ? KEEP : 0);
        }

        private TrackingEventKind kind(int truth, int result) {
            int last = lastResult[truth];
            lastResult[truth] = result;
            resultInThisFrame[truth] = result;
            return last == NOBODY || last == result ? TrackingEventKind.MATCH : TrackingEventKind.SWITCH;
        }
    }
}
