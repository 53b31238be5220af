package floorgauge.eval.tracking;

/**
 * The matching of HOTA (Luiten and others, 2021, "HOTA: a higher order metric for evaluating multi-object tracking",
 * International Journal of Computer Vision 129, section on computing the matching): in each frame the pairs for which the
 * sum of {@code A(truth, result) * similarity} is greatest, where A is the global alignment of the two identities, the
 * Jaccard index of their frames with each frame's similarity shared out among all pairs that compete for it. Similarities of
 * any size are paired; a localisation threshold is put on afterwards, by {@link HotaScores}.
 */
public final class HotaMatching implements Matching {

    @Override
    public EventLog match(SimilarityTable table) {
        Alignment alignment = new Alignment(table);
        EventLog.Builder log = new EventLog.Builder(table);
        for (int position = 0; position < table.frames().size(); position++) {
            FrameSimilarities frame = table.frames().get(position);
            FramePairing.pair(
                    frame,
                    position,
                    (r, c) -> alignment.of(frame.truthIndex(r), frame.resultIndex(c)) * frame.similarity(r, c),
                    (truth, result) -> TrackingEventKind.MATCH,
                    log);
        }
        return log.build();
    }

    /** The global alignment of two identities, 0 to 1. */
    private static final class Alignment {
        private final PairCounts shared = new PairCounts();
        private final int[] truthFrames;
        private final int[] resultFrames;

        Alignment(SimilarityTable table) {
            truthFrames = new int[table.truthIds().size()];
            resultFrames = new int[table.resultIds().size()];
            table.frames().forEach(this::add);
        }

        private void add(FrameSimilarities frame) {
            double[] rowSums = new double[frame.truthCount()];
            double[] columnSums = new double[frame.resultCount()];
            for (int row = 0; row < rowSums.length; row++) {
                truthFrames[frame.truthIndex(row)]++;
                for (int column = 0; column < columnSums.length; column++) {
                    rowSums[row] += frame.similarity(row, column);
                    columnSums[column] += frame.similarity(row, column);
                }
            }
            for (int column = 0; column < columnSums.length; column++) {
                resultFrames[frame.resultIndex(column)]++;
                share(frame, column, rowSums, columnSums[column]);
            }
        }

        private void share(FrameSimilarities frame, int column, double[] rowSums, double columnSum) {
            for (int row = 0; row < rowSums.length; row++) {
                double similarity = frame.similarity(row, column);
                double competing = rowSums[row] + columnSum - similarity;
                if (similarity > 0) {
                    shared.add(frame.truthIndex(row), frame.resultIndex(column), similarity / competing);
                }
            }
        }

        double of(int truth, int result) {
            double both = shared.get(truth, result);
            return both / (truthFrames[truth] + resultFrames[result] - both);
        }
    }
}
