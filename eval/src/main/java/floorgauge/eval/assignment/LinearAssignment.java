package floorgauge.eval.assignment;

import java.util.Arrays;

/**
 * The linear sum assignment problem: choose one column for each row, no column twice, so that the sum of the chosen entries
 * is least, or greatest. Exact, in O(r² c) time for r rows and c columns with r at most c.
 *
 * <p>Method: rows are brought in one at a time along the shortest augmenting path in the reduced costs
 * {@code cost[i][j] - u[i] - v[j] >= 0}, with dual variables u and v (Jonker and Volgenant, 1987, "A shortest augmenting
 * path algorithm for dense and sparse linear assignment problems", Computing 38). Equal sums: the result depends on the
 * matrix alone.
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
            return new ShortestPaths(cost, rows, columns).columnOfRow();
        }
        int[] rowOfColumn = new ShortestPaths(transposed(cost, rows, columns), columns, rows).columnOfRow();
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

    /** One run over a matrix with no more rows than columns. */
    private static final class ShortestPaths {
        private final double[] cost;
        private final int rows;
        private final int columns;
        private final double[] rowDual;
        private final double[] columnDual;
        private final int[] rowOfColumn;
        private final int[] columnOfRow;
        private final double[] distance;
        private final int[] rowBefore;
        private final boolean[] settled;

        ShortestPaths(double[] cost, int rows, int columns) {
            this.cost = cost;
            this.rows = rows;
            this.columns = columns;
            rowDual = new double[rows];
            columnDual = new double[columns];
            rowOfColumn = new int[columns];
            columnOfRow = new int[rows];
            distance = new double[columns];
            rowBefore = new int[columns];
            settled = new boolean[columns];
            Arrays.fill(rowOfColumn, UNASSIGNED);
            Arrays.fill(columnOfRow, UNASSIGNED);
        }

        int[] columnOfRow() {
            for (int row = 0; row < rows; row++) {
                augment(row, searchFrom(row));
            }
            return columnOfRow;
        }

        /** Dijkstra's search from a free row over reduced costs; updates the duals and returns the free column reached. */
        private int searchFrom(int start) {
            Arrays.fill(distance, Double.POSITIVE_INFINITY);
            Arrays.fill(settled, false);
            int row = start;
            double reached = 0;
            while (true) {
                relax(row, reached);
                int column = nearestUnsettled();
                reached = distance[column];
                settled[column] = true;
                if (rowOfColumn[column] == UNASSIGNED) {
                    updateDuals(start, reached);
                    return column;
                }
                row = rowOfColumn[column];
            }
        }

        private void relax(int row, double reached) {
            for (int column = 0; column < columns; column++) {
                double through = reached + cost[row * columns + column] - rowDual[row] - columnDual[column];
                if (!settled[column] && through < distance[column]) {
                    distance[column] = through;
                    rowBefore[column] = row;
                }
            }
        }

        private int nearestUnsettled() {
            int best = -1;
            for (int column = 0; column < columns; column++) {
                if (!settled[column] && (best < 0 || distance[column] < distance[best])) {
                    best = column;
                }
            }
            return best;
        }

        private void updateDuals(int start, double reached) {
            rowDual[start] += reached;
            for (int column = 0; column < columns; column++) {
                if (settled[column]) {
                    double slack = reached - distance[column];
                    columnDual[column] -= slack;
                    if (rowOfColumn[column] != UNASSIGNED) {
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
