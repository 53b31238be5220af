package floorgauge.eval.assignment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Assignment of greatest value where most pairs are worth nothing: two films' worth of track ids, of which few ever stood
 * near each other. Pairs that are not given are worth 0 and never chosen. The graph of given pairs falls apart into
 * connected components, and each is solved alone, so time follows the largest component and not the number of ids.
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
        int[] columnOfRow = new int[rows];
        Arrays.fill(columnOfRow, LinearAssignment.UNASSIGNED);
        for (List<Entry> component : components(entries, rows, columns)) {
            solve(component, columnOfRow);
        }
        return columnOfRow;
    }

    private static List<List<Entry>> components(List<Entry> entries, int rows, int columns) {
        int[] parent = new int[rows + columns];
        Arrays.setAll(parent, i -> i);
        for (Entry entry : entries) {
            parent[root(parent, entry.row())] = root(parent, rows + entry.column());
        }
        Map<Integer, List<Entry>> byRoot = new LinkedHashMap<>();
        for (Entry entry : entries) {
            byRoot.computeIfAbsent(root(parent, entry.row()), r -> new ArrayList<>())
                    .add(entry);
        }
        return List.copyOf(byRoot.values());
    }

    private static int root(int[] parent, int start) {
        int node = start;
        while (parent[node] != node) {
            parent[node] = parent[parent[node]];
            node = parent[node];
        }
        return node;
    }

    private static void solve(List<Entry> component, int[] columnOfRow) {
        SortedMap<Integer, Integer> rowIndex = new TreeMap<>();
        SortedMap<Integer, Integer> columnIndex = new TreeMap<>();
        component.forEach(e -> rowIndex.put(e.row(), 0));
        component.forEach(e -> columnIndex.put(e.column(), 0));
        number(rowIndex);
        number(columnIndex);
        int columns = columnIndex.size();
        double[] value = new double[Math.multiplyExact(rowIndex.size(), columns)];
        for (Entry entry : component) {
            value[rowIndex.get(entry.row()) * columns + columnIndex.get(entry.column())] = entry.value();
        }
        int[] chosen = LinearAssignment.maximise(value, rowIndex.size(), columns);
        List<Integer> columnIds = List.copyOf(columnIndex.keySet());
        rowIndex.forEach((id, row) -> {
            int column = chosen[row];
            if (column >= 0 && value[row * columns + column] > 0) {
                columnOfRow[id] = columnIds.get(column);
            }
        });
    }

    private static void number(SortedMap<Integer, Integer> index) {
        int next = 0;
        for (Map.Entry<Integer, Integer> entry : index.entrySet()) {
            entry.setValue(next++);
        }
    }
}
