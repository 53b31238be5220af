package floorgauge.eval.tracking;

import java.util.LinkedHashMap;
import java.util.Map;

/** A number for each pair of a truth's and a result's index, held only where it is not zero; in order of first use. */
final class PairCounts {

    private final Map<Long, double[]> sums = new LinkedHashMap<>();

    /** Takes a pair and its sum. */
    @FunctionalInterface
    interface Visitor {
        void visit(int truth, int result, double sum);
    }

    void add(int truth, int result, double amount) {
        sums.computeIfAbsent(key(truth, result), k -> new double[1])[0] += amount;
    }

    double get(int truth, int result) {
        double[] sum = sums.get(key(truth, result));
        return sum == null ? 0 : sum[0];
    }

    void forEach(Visitor visitor) {
        sums.forEach((key, sum) -> visitor.visit((int) (key >> Integer.SIZE), (int) (long) key, sum[0]));
    }

    private static long key(int truth, int result) {
        return ((long) truth << Integer.SIZE) | result;
    }
}
