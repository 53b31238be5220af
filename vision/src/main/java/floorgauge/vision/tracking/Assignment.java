package floorgauge.vision.tracking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The cheapest set of pairs between rows and columns, each used at most once, where most pairs are impossible.
 *
 * <p>Minimises the sum of the chosen pairs' costs plus the cost of leaving out each row that is left out. Successive
 * shortest augmenting paths with dual prices (R. Jonker and A. Volgenant, "A shortest augmenting path algorithm for dense
 * and sparse linear assignment problems", 1987), with the possible pairs as lists: the work grows with the pairs that are
 * possible, so a film's tracklets can be linked in one problem. Ties fall to the lower column.
 */
final class Assignment {

    /** In {@link #solve()}'s result: the row is left out. */
    static final int NONE = -1;

    private final int rows;
    private final int columns;
    private final List<List<Edge>> edges = new ArrayList<>();

    private record Edge(int column, double cost) {}

    private record Reached(double distance, int column) implements Comparable<Reached> {
        @Override
        public int compareTo(Reached other) {
            int byDistance = Double.compare(distance, other.distance);
            return byDistance != 0 ? byDistance : Integer.compare(column, other.column);
        }
    }

    /**
     * @param rows number of rows, may be 0
     * @param columns number of columns, may be 0
     * @param leaveOutCost cost of leaving out a row, finite
     */
    Assignment(int rows, int columns, double leaveOutCost) {
        this.rows = rows;
        this.columns = columns;
        for (int row = 0; row < rows; row++) {
            edges.add(new ArrayList<>());
            // Each row's own way out is a column that no other row can use.
            edges.get(row).add(new Edge(columns + row, leaveOutCost));
        }
    }

    /** Makes a pair possible, at most once for each pair. */
    void allow(int row, int column, double cost) {
        if (column < 0 || column >= columns) {
            throw new IllegalArgumentException("no column " + column + " in 0 to " + (columns - 1));
        }
        if (!Double.isFinite(cost)) {
            throw new IllegalArgumentException(
                    "cost of row " + row + ", column " + column + " must be finite: " + cost);
        }
        edges.get(row).add(new Edge(column, cost));
    }

    /** The column of each row, or {@link #NONE}. */
    int[] solve() {
        int total = columns + rows;
        int[] columnOf = new int[rows];
        int[] rowOf = new int[total];
        double[] price = new double[total];
        double[] distance = new double[total];
        int[] cameFrom = new int[total];
        boolean[] settled = new boolean[total];
        Arrays.fill(columnOf, NONE);
        Arrays.fill(rowOf, NONE);
        Arrays.fill(distance, Double.POSITIVE_INFINITY);
        for (int row = 0; row < rows; row++) {
            augment(row, columnOf, rowOf, price, distance, cameFrom, settled);
        }
        for (int row = 0; row < rows; row++) {
            if (columnOf[row] >= columns) {
                columnOf[row] = NONE;
            }
        }
        return columnOf;
    }

    private void augment(
            int start,
            int[] columnOf,
            int[] rowOf,
            double[] price,
            double[] distance,
            int[] cameFrom,
            boolean[] settled) {
        PriorityQueue<Reached> queue = new PriorityQueue<>();
        List<Integer> touched = new ArrayList<>();
        List<Integer> settledColumns = new ArrayList<>();
        int row = start;
        double base = 0;
        int sink = NONE;
        while (sink == NONE) {
            // Reduced cost of the pair through which this row is held now: leaving it gives it back.
            double held = columnOf[row] == NONE ? lowest(row, price) : reduced(row, columnOf[row], price);
            for (Edge edge : edges.get(row)) {
                int column = edge.column();
                double through = base + edge.cost() - price[column] - held;
                if (!settled[column] && through < distance[column]) {
                    if (distance[column] == Double.POSITIVE_INFINITY) {
                        touched.add(column);
                    }
                    distance[column] = through;
                    cameFrom[column] = row;
                    queue.add(new Reached(through, column));
                }
            }
            Reached next = queue.poll();
            while (settled[next.column()] || next.distance() > distance[next.column()]) {
                next = queue.poll();
            }
            settled[next.column()] = true;
            base = next.distance();
            if (rowOf[next.column()] == NONE) {
                sink = next.column();
            } else {
                settledColumns.add(next.column());
                row = rowOf[next.column()];
            }
        }
        for (int column : settledColumns) {
            price[column] += distance[column] - base;
        }
        turnPath(start, sink, columnOf, rowOf, cameFrom);
        settled[sink] = false;
        for (int column : settledColumns) {
            settled[column] = false;
        }
        for (int column : touched) {
            distance[column] = Double.POSITIVE_INFINITY;
        }
    }

    private double lowest(int row, double[] price) {
        double least = Double.POSITIVE_INFINITY;
        for (Edge edge : edges.get(row)) {
            least = Math.min(least, edge.cost() - price[edge.column()]);
        }
        return least;
    }

    private double reduced(int row, int column, double[] price) {
        for (Edge edge : edges.get(row)) {
            if (edge.column() == column) {
                return edge.cost() - price[column];
            }
        }
        throw new IllegalStateException("row " + row + " holds column " + column + " without a pair");
    }

    private static void turnPath(int start, int sink, int[] columnOf, int[] rowOf, int[] cameFrom) {
        int column = sink;
        while (true) {
            int row = cameFrom[column];
            int before = columnOf[row];
            columnOf[row] = column;
            rowOf[column] = row;
            if (row == start) {
                return;
            }
            column = before;
        }
    }
}
