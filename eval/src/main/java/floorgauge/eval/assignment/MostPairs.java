package floorgauge.eval.assignment;

import java.util.ArrayList;
import java.util.List;

/**
 * One-to-one matching within a tolerance: as many pairs as can be made, and among those matchings the one whose pairs lie
 * closest together. Without the first rule a near pair could leave two others alone.
 */
public final class MostPairs {

    private MostPairs() {}

    /**
     * @param row index from 0
     * @param column index from 0
     * @param closeness from 0 (at the edge of the tolerance) to 1 (the same)
     */
    public record Candidate(int row, int column, double closeness) {

        public Candidate {
            if (!(closeness >= 0 && closeness <= 1)) {
                throw new IllegalArgumentException("a closeness lies in 0 to 1: " + closeness);
            }
        }
    }

    /**
     * @param candidates the pairs within the tolerance, each at most once
     * @return for each row its column, or {@link LinearAssignment#UNASSIGNED}
     */
    public static int[] match(List<Candidate> candidates, int rows, int columns) {
        // One more pair is worth more than all closeness together can be.
        double onePair = 1.0 + Math.min(rows, columns);
        List<SparseAssignment.Entry> entries = new ArrayList<>(candidates.size());
        for (Candidate candidate : candidates) {
            entries.add(
                    new SparseAssignment.Entry(candidate.row(), candidate.column(), onePair + candidate.closeness()));
        }
        return SparseAssignment.maximise(entries, rows, columns);
    }
}
