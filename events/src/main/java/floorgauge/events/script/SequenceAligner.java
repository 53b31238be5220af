package floorgauge.events.script;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Aligns the steps of a script with the acts of a possession, both in order, at the least cost (Needleman and Wunsch, 1970, "A
 * general method applicable to the search for similarities", Journal of Molecular Biology 48).
 */
final class SequenceAligner {

    /** What differs by less costs the same. */
    private static final double LESS = 1e-9;

    private SequenceAligner() {}

    /** The end of the cheapest order with its cost; above {@code most} where none costs less. */
    static final class Search {

        private final AssignedCosts costs;
        private double most;
        private Optional<StepTree.Node> best = Optional.empty();

        /** @param most orders that cost as much are of no use */
        Search(AssignedCosts costs, double most) {
            this.costs = costs;
            this.most = most;
        }

        /** The last step of the cheapest order; empty where every order costs too much. */
        Optional<StepTree.Node> run() {
            double[] row = new double[costs.acts() + 1];
            for (int j = 1; j < row.length; j++) {
                row[j] = row[j - 1] + costs.extra(j - 1);
            }
            follow(costs.way().root(), row);
            return best;
        }

        double cost() {
            return most;
        }

        private void follow(StepTree.Node node, double[] row) {
            if (node.next().isEmpty() && row[row.length - 1] < most - LESS) {
                most = row[row.length - 1];
                best = Optional.of(node);
            }
            for (StepTree.Node next : node.next()) {
                double[] then = new double[row.length];
                if (step(next.step(), row, then) <= most) {
                    follow(next, then);
                }
            }
        }

        /** The table's next row; returns the least in it, below which no order that goes on from here can end. */
        private double step(int step, double[] row, double[] then) {
            double leftOut = costs.leftOut(step);
            then[0] = row[0] + leftOut;
            double least = then[0];
            for (int j = 1; j < row.length; j++) {
                then[j] = Math.min(
                        row[j - 1] + costs.match(step, j - 1),
                        Math.min(row[j] + leftOut, then[j - 1] + costs.extra(j - 1)));
                least = Math.min(least, then[j]);
            }
            return least;
        }
    }

    private static double[] firstRow(List<Act> acts) {
        double[] row = new double[acts.size() + 1];
        for (int j = 1; j < row.length; j++) {
            row[j] = row[j - 1] + StepCosts.extra(acts.get(j - 1).step());
        }
        return row;
    }

    /** Which act each step is taken for, at the least cost. */
    static List<Optional<Act>> matches(
            List<ScriptStep> steps, List<Act> acts, Map<String, Integer> holders, StepCosts costs) {
        int n = steps.size();
        int m = acts.size();
        double[][] table = new double[n + 1][];
        table[0] = firstRow(acts);
        for (int i = 1; i <= n; i++) {
            table[i] = new double[m + 1];
            double leftOut = costs.leftOut(steps.get(i - 1));
            table[i][0] = table[i - 1][0] + leftOut;
            for (int j = 1; j <= m; j++) {
                table[i][j] = Math.min(
                        table[i - 1][j - 1] + costs.match(steps.get(i - 1), acts.get(j - 1), holders),
                        Math.min(
                                table[i - 1][j] + leftOut,
                                table[i][j - 1]
                                        + StepCosts.extra(acts.get(j - 1).step())));
            }
        }
        List<Optional<Act>> matches = new ArrayList<>(Collections.nCopies(n, Optional.empty()));
        int i = n;
        int j = m;
        while (i > 0 && j > 0) {
            double match = table[i - 1][j - 1] + costs.match(steps.get(i - 1), acts.get(j - 1), holders);
            if (table[i][j] >= match - 1e-12) {
                matches.set(i - 1, Optional.of(acts.get(j - 1)));
                i--;
                j--;
            } else if (table[i][j] >= table[i - 1][j] + costs.leftOut(steps.get(i - 1)) - 1e-12) {
                i--;
            } else {
                j--;
            }
        }
        return matches;
    }

    /** Every order of the steps that the script allows: those of one group in any order. */
    static List<List<ScriptStep>> orders(List<ScriptStep> steps) {
        List<List<ScriptStep>> orders = List.of(List.of());
        int from = 0;
        while (from < steps.size()) {
            int group = steps.get(from).group();
            int to = from + 1;
            while (group > 0 && to < steps.size() && steps.get(to).group() == group) {
                to++;
            }
            List<List<ScriptStep>> parts = interleavings(lanes(steps.subList(from, to)));
            List<List<ScriptStep>> longer = new ArrayList<>();
            for (List<ScriptStep> before : orders) {
                for (List<ScriptStep> part : parts) {
                    List<ScriptStep> order = new ArrayList<>(before);
                    order.addAll(part);
                    longer.add(order);
                }
            }
            orders = longer;
            from = to;
        }
        return orders;
    }

    private static List<List<ScriptStep>> lanes(List<ScriptStep> group) {
        Map<Integer, List<ScriptStep>> lanes = new TreeMap<>();
        group.forEach(
                s -> lanes.computeIfAbsent(s.lane(), l -> new ArrayList<>()).add(s));
        return List.copyOf(lanes.values());
    }

    private static List<List<ScriptStep>> interleavings(List<List<ScriptStep>> lanes) {
        if (lanes.stream().allMatch(List::isEmpty)) {
            return List.of(List.of());
        }
        List<List<ScriptStep>> all = new ArrayList<>();
        for (int k = 0; k < lanes.size(); k++) {
            if (lanes.get(k).isEmpty()) {
                continue;
            }
            List<List<ScriptStep>> rest = new ArrayList<>(lanes);
            rest.set(k, lanes.get(k).subList(1, lanes.get(k).size()));
            for (List<ScriptStep> tail : interleavings(rest)) {
                List<ScriptStep> order = new ArrayList<>();
                order.add(lanes.get(k).get(0));
                order.addAll(tail);
                all.add(order);
            }
        }
        return all;
    }
}
