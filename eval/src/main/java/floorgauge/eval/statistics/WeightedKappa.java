package floorgauge.eval.statistics;

/**
 * Agreement of two graders beyond chance, with graver disagreements weighing more (Cohen, 1968, "Weighted kappa: nominal
 * scale agreement with provision for scaled disagreement or partial credit", Psychological Bulletin 70): {@code 1 - sum(w o)
 * / sum(w e)} with o the observed counts, e those expected of independent graders, w the weight of a disagreement.
 */
public final class WeightedKappa {

    private WeightedKappa() {}

    /** The weight of a grade of i from one grader and j from the other; 0 for i = j. */
    @FunctionalInterface
    public interface Weight {
        double of(int first, int second);
    }

    /**
     * Kappa with the squared difference of grades as weight, as is usual for ordered grades.
     *
     * @param first grades from 0 to {@code grades} - 1
     * @param second the other grader's, in the same order
     * @return -1 to 1; NaN without grades, or where both graders gave one and the same grade throughout
     */
    public static double quadratic(int[] first, int[] second, int grades) {
        return of(table(first, second, grades), (i, j) -> (double) (i - j) * (i - j));
    }

    /**
     * Kappa of a table of counts or shares.
     *
     * @param table by first grader, then second; at least 0
     */
    public static double of(double[][] table, Weight weight) {
        int grades = table.length;
        double[] rows = new double[grades];
        double[] columns = new double[grades];
        double total = 0;
        for (int i = 0; i < grades; i++) {
            for (int j = 0; j < grades; j++) {
                rows[i] += table[i][j];
                columns[j] += table[i][j];
                total += table[i][j];
            }
        }
        double observed = 0;
        double expected = 0;
        for (int i = 0; i < grades; i++) {
            for (int j = 0; j < grades; j++) {
                observed += weight.of(i, j) * table[i][j];
                expected += weight.of(i, j) * rows[i] * columns[j] / total;
            }
        }
        return expected > 0 ? 1 - observed / expected : Double.NaN;
    }

    private static double[][] table(int[] first, int[] second, int grades) {
        if (first.length != second.length) {
            throw new IllegalArgumentException(first.length + " grades against " + second.length);
        }
        double[][] table = new double[grades][grades];
        for (int i = 0; i < first.length; i++) {
            requireGrade(first[i], grades);
            requireGrade(second[i], grades);
            table[first[i]][second[i]]++;
        }
        return table;
    }

    private static void requireGrade(int grade, int grades) {
        if (grade < 0 || grade >= grades) {
            throw new IllegalArgumentException("a grade lies in 0 to " + (grades - 1) + ": " + grade);
        }
    }
}
