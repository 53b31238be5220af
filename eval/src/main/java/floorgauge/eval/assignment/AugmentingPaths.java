package floorgauge.eval.assignment;

import java.util.Arrays;

/**
 * Assignment of least cost by shortest augmenting paths: rows are brought in one at a time along the shortest path in the
 * reduced costs {@code cost[i][j] - u[i] - v[j] >= 0}, with dual variables u and v (Jonker and Volgenant, 1987, "A shortest
 * augmenting path algorithm for dense and sparse linear assignment problems", Computing 38). What pairs there are, and how the
 * nearest column is found, is left to the kinds of matrix. Every row must be able to get a column.
 */
abstract class AugmentingPaths {

    private final double[] rowDual;
    private final double[] columnDual;
    private final int[] rowOfColumn;
    private final int[] columnOfRow;
    private final double[] distance;
    private final int[] rowBefore;
    private final boolean[] settled;
    private final int[] touched;
    private int touchedCount;
    private double reached;

    AugmentingPaths(int rows, int columns) {
        rowDual = new double[rows];
        columnDual = new double[columns];
        rowOfColumn = new int[columns];
        columnOfRow = new int[rows];
        distance = new double[columns];
        rowBefore = new int[columns];
        settled = new boolean[columns];
        touched = new int[columns];
        Arrays.fill(rowOfColumn, LinearAssignment.UNASSIGNED);
        Arrays.fill(columnOfRow, LinearAssignment.UNASSIGNED);
        Arrays.fill(distance, Double.POSITIVE_INFINITY);
    }

    /** Calls {@link #reach} for every pair of the row. */
    abstract void relax(int row);

    /** A column that was reached and is not settled, at the least distance; of equal ones the same in every run. */
    abstract int nearest();

    /** A search begins: nothing is reached yet. */
    void begin() {}

    /** A column can be had at a lesser distance than before. */
    void nearer(int column, double newDistance) {}

    /** Runs over all rows. */
    final int[] solve() {
        for (int row = 0; row < columnOfRow.length; row++) {
            augment(row, searchFrom(row));
            forget();
        }
        return columnOfRow;
    }

    final void reach(int row, int column, double cost) {
        double through = reached + cost - rowDual[row] - columnDual[column];
        if (settled[column] || !(through < distance[column])) {
            return;
        }
        if (distance[column] == Double.POSITIVE_INFINITY) {
            touched[touchedCount++] = column;
        }
        distance[column] = through;
        rowBefore[column] = row;
        nearer(column, through);
    }

    final boolean isSettled(int column) {
        return settled[column];
    }

    final double distance(int column) {
        return distance[column];
    }

    /** Dijkstra's search from a free row; updates the duals and returns the free column reached. */
    private int searchFrom(int start) {
        begin();
        reached = 0;
        int row = start;
        while (true) {
            relax(row);
            int column = nearest();
            reached = distance[column];
            settled[column] = true;
            if (rowOfColumn[column] == LinearAssignment.UNASSIGNED) {
                updateDuals(start);
                return column;
            }
            row = rowOfColumn[column];
        }
    }

    private void updateDuals(int start) {
        rowDual[start] += reached;
        for (int i = 0; i < touchedCount; i++) {
            int column = touched[i];
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

    private void forget() {
        for (int i = 0; i < touchedCount; i++) {
            distance[touched[i]] = Double.POSITIVE_INFINITY;
            settled[touched[i]] = false;
        }
        touchedCount = 0;
    }
}
