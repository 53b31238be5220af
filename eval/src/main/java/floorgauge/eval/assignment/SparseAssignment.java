package floorgauge.eval.assignment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Assignment of greatest value where most pairs are worth nothing: two films' worth of track ids, or of moments, of which few
 * ever lie near each other. Pairs that are not given are worth 0 and never chosen.
 *
 * <p>Method: {@link AugmentingPaths}, with the given pairs held row by row, a heap for the search, and for each row a
 * column of its own that stands for "nobody". A search touches only what it can reach, so memory grows with the number of
 * pairs, and for pairs that lie near each other so does time.
 */
public final class SparseAssignment {

    /**
     * One pair that may be chosen.
     *
     * @param row index from 0
     * @param column index from 0
     * @param value above 0, finite
     */
    public record Entry(int row, int column, double value) {

        public Entry {
            if (row < 0 || column < 0) {
                throw new IllegalArgumentException("indices count from 0: " + row + ", " + column);
            }
            if (!(value > 0 && Double.isFinite(value))) {
                throw new IllegalArgumentException("value must be above 0 and finite: " + value);
            }
        }
    }

    private SparseAssignment() {}

    /**
     * @param entries each pair at most once
     * @param rows number of rows
     * @param columns number of columns
     * @return for each row its column, or {@link LinearAssignment#UNASSIGNED}
     */
    public static int[] maximise(List<Entry> entries, int rows, int columns) {
        int[] columnOfRow = new GivenPairs(entries, rows, columns).solve();
        for (int row = 0; row < rows; row++) {
            if (columnOfRow[row] >= columns) {
                columnOfRow[row] = LinearAssignment.UNASSIGNED;
            }
        }
        return columnOfRow;
    }

    /** Columns from {@code columns} on are the rows' own. Costs are the greatest value less each pair's value. */
    private static final class GivenPairs extends AugmentingPaths {
        private static final Comparator<Reached> NEAREST_FIRST =
                Comparator.comparingDouble(Reached::distance).thenComparingInt(Reached::column);

        private final int columns;
        private final double nobodyCost;
        private final List<List<Entry>> entriesOfRow = new ArrayList<>();
        private final PriorityQueue<Reached> queue = new PriorityQueue<>(NEAREST_FIRST);

        /** A column and how far it is. */
        private record Reached(double distance, int column) {}

        GivenPairs(List<Entry> entries, int rows, int columns) {
            super(rows, Math.addExact(columns, rows));
            this.columns = columns;
            nobodyCost = entries.stream().mapToDouble(Entry::value).max().orElse(0);
            for (int row = 0; row < rows; row++) {
                entriesOfRow.add(new ArrayList<>(2));
            }
            entries.forEach(e -> entriesOfRow.get(e.row()).add(e));
        }

        @Override
        void begin() {
            queue.clear();
        }

        @Override
        void relax(int row) {
            for (Entry entry : entriesOfRow.get(row)) {
                reach(row, entry.column(), nobodyCost - entry.value());
            }
            reach(row, columns + row, nobodyCost);
        }

        @Override
        void nearer(int column, double newDistance) {
            queue.add(new Reached(newDistance, column));
        }

        /** Entries that a shorter way has overtaken are dropped. */
        @Override
        int nearest() {
            Reached next = queue.remove();
            while (isSettled(next.column()) || next.distance() > distance(next.column())) {
                next = queue.remove();
            }
            return next.column();
        }
    }
}
