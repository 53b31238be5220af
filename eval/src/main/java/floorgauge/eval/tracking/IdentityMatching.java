package floorgauge.eval.tracking;

import floorgauge.eval.assignment.SparseAssignment;
import java.util.ArrayList;
import java.util.List;

/**
 * The matching of the identity scores (Ristani and others, 2016, "Performance measures and a data set for multi-target,
 * multi-camera tracking", section 2.2): one result identity for one truth identity over the whole film, chosen so that the
 * fewest sightings are left without their partner. A pair in a frame is a match where its two identities are partners and
 * its similarity reaches the threshold; everything else is a miss or a false alarm.
 *
 * @param threshold least similarity of a pair, above 0 and at most 1
 */
public record IdentityMatching(double threshold) implements Matching {

    public IdentityMatching {
        Matching.requireThreshold(threshold);
    }

    /** With the usual threshold of 0.5. */
    public static IdentityMatching usual() {
        return new IdentityMatching(DEFAULT_THRESHOLD);
    }

    @Override
    public EventLog match(SimilarityTable table) {
        int[] partner = partners(table);
        EventLog.Builder log = new EventLog.Builder(table);
        for (int position = 0; position < table.frames().size(); position++) {
            FrameSimilarities frame = table.frames().get(position);
            FramePairing.pair(
                    frame,
                    position,
                    (r, c) -> reaches(frame, r, c) && partner[frame.truthIndex(r)] == frame.resultIndex(c) ? 1 : 0,
                    (truth, result) -> TrackingEventKind.MATCH,
                    log);
        }
        return log.build();
    }

    private boolean reaches(FrameSimilarities frame, int row, int column) {
        return frame.similarity(row, column) >= threshold - ROUNDING;
    }

    /** Result index of each truth. Unpaired sightings number truths + results - 2 matches: the most matches are best. */
    private int[] partners(SimilarityTable table) {
        PairCounts together = new PairCounts();
        for (FrameSimilarities frame : table.frames()) {
            for (int row = 0; row < frame.truthCount(); row++) {
                for (int column = 0; column < frame.resultCount(); column++) {
                    if (reaches(frame, row, column)) {
                        together.add(frame.truthIndex(row), frame.resultIndex(column), 1);
                    }
                }
            }
        }
        List<SparseAssignment.Entry> entries = new ArrayList<>();
        together.forEach((truth, result, count) -> entries.add(new SparseAssignment.Entry(truth, result, count)));
        return SparseAssignment.maximise(
                entries, table.truthIds().size(), table.resultIds().size());
    }
}
