package floorgauge.events.matchup;

import java.util.Arrays;

/** The assignment of rows to columns with the least sum of costs (Kuhn, The Hungarian Method, 1955). */
public final class Assignment {

    private Assignment() {}

    /**
     * @param cost rows by columns, finite, every row of one length
     * @return for each row its column, or -1 where there are more rows than columns and it goes without
     */
    public static int[] least(double[][] cost) {
        int rows = cost.length;
        int columns = rows == 0 ? 0 : cost[0].length;
        int[] result = new int[rows];
        Arrays.fill(result, -1);
        if (rows == 0 || columns == 0) {
            return result;
        }
        if (rows > columns) {
            int[] turned = least(transposed(cost));
            for (int c = 0; c < columns; c++) {
                result[turned[c]] = c;
            }
            return result;
        }
        int[] rowOf = solve(cost, rows, columns);
        for (int c = 1; c <= columns; c++) {
            if (rowOf[c] > 0) {
                result[rowOf[c] - 1] = c - 1;
            }
        }
        return result;
    }

    /** Shortest augmenting paths with potentials; index 0 stands for none. */
    private static int[] solve(double[][] cost, int rows, int columns) {
        double[] u = new double[rows + 1];
        double[] v = new double[columns + 1];
        int[] rowOf = new int[columns + 1];
        int[] way = new int[columns + 1];
        for (int row = 1; row <= rows; row++) {
            rowOf[0] = row;
            int column = 0;
            double[] slack = new double[columns + 1];
            Arrays.fill(slack, Double.POSITIVE_INFINITY);
            boolean[] used = new boolean[columns + 1];
            do {
                used[column] = true;
                int current = rowOf[column];
                int next = -1;
                double delta = Double.POSITIVE_INFINITY;
                for (int c = 1; c <= columns; c++) {
                    if (used[c]) {
                        continue;
                    }
                    double reduced = cost[current - 1][c - 1] - u[current] - v[c];
                    if (reduced < slack[c]) {
                        slack[c] = reduced;
                        way[c] = column;
                    }
                    if (slack[c] < delta) {
                        delta = slack[c];
                        next = c;
                    }
                }
                for (int c = 0; c <= columns; c++) {
                    if (used[c]) {
                        u[rowOf[c]] += delta;
                        v[c] -= delta;
                    } else {
                        slack[c] -= delta;
                    }
                }
                column = next;
            } while (rowOf[column] != 0);
            while (column != 0) {
                rowOf[column] = rowOf[way[column]];
                column = way[column];
            }
        }
        return rowOf;
    }

    private static double[][] transposed(double[][] a) {
        double[][] t = new double[a[0].length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a[0].length; j++) {
                t[j][i] = a[i][j];
            }
        }
        return t;
    }
}
