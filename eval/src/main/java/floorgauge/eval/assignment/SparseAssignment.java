package floorgauge.eval.assignment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Assignment of greatest value where most pairs are worth nothing: two films' worth of track ids, or of moments, of which few
 * ever lie near each other. Pairs that are not given are worth 0 and never chosen.
 *
 * <p>The method of {@link LinearAssignment}, with the given pairs held row by row, a heap for the search, and for each row a
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
        int[] columnOfRow = new ShortestPaths(entries, rows, columns).columnOfRow();
        for (int row = 0; row < rows; row++) {
            if (columnOfRow[row] >= columns) {
                columnOfRow[row] = LinearAssignment.UNASSIGNED;
            }
        }
        return columnOfRow;
    }

    /** One run; columns from {@code columns} on are the rows' own. Costs are the greatest value less each pair's value. */
    private static final class ShortestPaths {
        private static final Comparator<Reached> NEAREST_FIRST =
                Comparator.comparingDouble(Reached::distance).thenComparingInt(Reached::column);

        private final int columns;
        private final double nobodyCost;
        private final List<List<Entry>> entriesOfRow = new ArrayList<>();
        private final double[] rowDual;
        private final double[] columnDual;
        private final int[] rowOfColumn;
        private final int[] columnOfRow;
        private final double[] distance;
        private final int[] rowBefore;
        private final boolean[] settled;
        private final List<Integer> touched = new ArrayList<>();

        /** A column and how far it is. */
        private record Reached(double distance, int column) {}

        ShortestPaths(List<Entry> entries, int rows, int columns) {
            this.columns = columns;
            nobodyCost = entries.stream().mapToDouble(Entry::value).max().orElse(0);
            for (int row = 0; row < rows; row++) {
                entriesOfRow.add(new ArrayList<>(2));
            }
            entries.forEach(e -> entriesOfRow.get(e.row()).add(e));
            int all = Math.addExact(columns, rows);
            rowDual = new double[rows];
            columnDual = new double[all];
            rowOfColumn = new int[all];
            columnOfRow = new int[rows];
            distance = new double[all];
            rowBefore = new int[all];
            settled = new boolean[all];
            Arrays.fill(rowOfColumn, LinearAssignment.UNASSIGNED);
            Arrays.fill(columnOfRow, LinearAssignment.UNASSIGNED);
            Arrays.fill(distance, Double.POSITIVE_INFINITY);
        }

        int[] columnOfRow() {
            for (int row = 0; row < columnOfRow.length; row++) {
                augment(row, searchFrom(row));
                touched.forEach(this::forget);
                touched.clear();
            }
            return columnOfRow;
        }

        private void forget(int column) {
            distance[column] = Double.POSITIVE_INFINITY;
            settled[column] = false;
        }

        private int searchFrom(int start) {
            PriorityQueue<Reached> queue = new PriorityQueue<>(NEAREST_FIRST);
            int row = start;
            double reached = 0;
            while (true) {
                relax(row, reached, queue);
                Reached next = nearest(queue);
                reached = next.distance();
                settled[next.column()] = true;
                if (rowOfColumn[next.column()] == LinearAssignment.UNASSIGNED) {
                    updateDuals(start, reached);
                    return next.column();
                }
                row = rowOfColumn[next.column()];
            }
        }

        private void relax(int row, double reached, PriorityQueue<Reached> queue) {
            for (Entry entry : entriesOfRow.get(row)) {
                relax(row, entry.column(), reached, nobodyCost - entry.value(), queue);
            }
            relax(row, columns + row, reached, nobodyCost, queue);
        }

        private void relax(int row, int column, double reached, double cost, PriorityQueue<Reached> queue) {
            double through = reached + cost - rowDual[row] - columnDual[column];
            if (!settled[column] && through < distance[column]) {
                if (distance[column] == Double.POSITIVE_INFINITY) {
                    touched.add(column);
                }
                distance[column] = through;
                rowBefore[column] = row;
                queue.add(new Reached(through, column));
            }
        }

        /** The nearest column that is not settled; entries that a shorter way has overtaken are dropped. */
        private Reached nearest(PriorityQueue<Reached> queue) {
            Reached next = queue.remove();
            while (settled[next.column()]) {
                next = queue.remove();
            }
            return next;
        }

        private void updateDuals(int start, double reached) {
            rowDual[start] += reached;
            for (int column : touched) {
                if (settled[column]) {
                    double slack = reached - distance[column];
                    columnDual[column] -= slack;
                    if (rowOfColumn[column] != LinearAssignment.UNASSIGNED) {
                        rowDual[rowOfColumn[column]] += slack;
                    }
                }
            }
        }

        private void augment(int start, int freeColumn) {
            int column = freeColumn;
            int row;
            do {
                row = rowBefore[column];
                rowOfColumn[column] = row;
                int displaced = columnOfRow[row];
                columnOfRow[row] = column;
                column = displaced;
            } while (row != start);
        }
    }
}
