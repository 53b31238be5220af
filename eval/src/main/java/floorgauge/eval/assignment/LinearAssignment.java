package floorgauge.eval.assignment;

import java.util.Arrays;

/**
 * The linear sum assignment problem: choose one column for each row, no column twice, so that the sum of the chosen entries
 * is least, or greatest. Exact, in O(r² c) time for r rows and c columns with r at most c.
 *
 * <p>Method: {@link AugmentingPaths}. Equal sums: the result depends on the matrix alone.
 */
public final class LinearAssignment {

    /** Marks a row that got no column. */
    public static final int UNASSIGNED = -1;

    private LinearAssignment() {}

    /**
     * @param cost row-major, finite
     * @return for each row its column, or {@link #UNASSIGNED}; as many are assigned as the shorter side allows
     */
    public static int[] minimise(double[] cost, int rows, int columns) {
        requireMatrix(cost, rows, columns);
        if (rows <= columns) {
            return new FullMatrix(cost, rows, columns).solve();
        }
        int[] rowOfColumn = new FullMatrix(transposed(cost, rows, columns), columns, rows).solve();
        return inverted(rowOfColumn, rows);
    }

    /**
     * @param value row-major, finite
     * @return for each row its column, or {@link #UNASSIGNED}; as many are assigned as the shorter side allows
     */
    public static int[] maximise(double[] value, int rows, int columns) {
        double[] cost = new double[value.length];
        for (int i = 0; i < value.length; i++) {
            cost[i] = -value[i];
        }
        return minimise(cost, rows, columns);
    }

    private static void requireMatrix(double[] entries, int rows, int columns) {
        if (rows < 0 || columns < 0 || entries.length != Math.multiplyExact(rows, columns)) {
            throw new IllegalArgumentException(
                    entries.length + " entries do not make " + rows + " rows of " + columns + " columns");
        }
        for (double entry : entries) {
            if (!Double.isFinite(entry)) {
                throw new IllegalArgumentException("entries must be finite: " + entry);
            }
        }
    }

    private static double[] transposed(double[] entries, int rows, int columns) {
        double[] result = new double[entries.length];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                result[c * rows + r] = entries[r * columns + c];
            }
        }
        return result;
    }

    private static int[] inverted(int[] rowOfColumn, int rows) {
        int[] columnOfRow = new int[rows];
        Arrays.fill(columnOfRow, UNASSIGNED);
        for (int column = 0; column < rowOfColumn.length; column++) {
            columnOfRow[rowOfColumn[column]] = column;
        }
        return columnOfRow;
    }

    /** A full matrix with no more rows than columns: every column is looked at in every step. */
    private static final class FullMatrix extends AugmentingPaths {
        private final double[] cost;
        private final int columns;

        FullMatrix(double[] cost, int rows, int columns) {
            super(rows, columns);
            this.cost = cost;
            this.columns = columns;
        }

        @Override
        void relax(int row) {
            for (int column = 0; column < columns; column++) {
                reach(row, column, cost[row * columns + column]);
            }
        }

        @Override
        int nearest() {
            int best = UNASSIGNED;
            for (int column = 0; column < columns; column++) {
                if (!isSettled(column) && (best == UNASSIGNED || distance(column) < distance(best))) {
                    best = column;
                }
            }
            return best;
        }
    }
}
