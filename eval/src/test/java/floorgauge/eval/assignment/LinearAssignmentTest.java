package floorgauge.eval.assignment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class LinearAssignmentTest {

    @Test
    void nothingToAssign() {
        assertThat(LinearAssignment.minimise(new double[0], 0, 0)).isEmpty();
        assertThat(LinearAssignment.minimise(new double[0], 0, 3)).isEmpty();
        assertThat(LinearAssignment.minimise(new double[0], 2, 0)).containsExactly(-1, -1);
    }

    @Test
    void oneEntry() {
        assertThat(LinearAssignment.minimise(new double[] {7}, 1, 1)).containsExactly(0);
        assertThat(LinearAssignment.maximise(new double[] {-7}, 1, 1)).containsExactly(0);
    }

    @Test
    void allEqualStillAssignsEveryone() {
        assertThat(LinearAssignment.minimise(new double[9], 3, 3)).containsExactlyInAnyOrder(0, 1, 2);
    }

    @Test
    void refusesWhatIsNoMatrix() {
        assertThatThrownBy(() -> LinearAssignment.minimise(new double[5], 2, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("5 entries do not make 2 rows of 3 columns");
        assertThatThrownBy(() -> LinearAssignment.minimise(new double[] {1, Double.NaN}, 1, 2))
                .hasMessageContaining("finite");
        assertThatThrownBy(() -> LinearAssignment.minimise(new double[] {1, Double.POSITIVE_INFINITY}, 1, 2))
                .hasMessageContaining("finite");
        assertThatThrownBy(() -> LinearAssignment.minimise(new double[0], -1, 0))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /**
     * The example in the documentation of SciPy's {@code scipy.optimize.linear_sum_assignment}: cost [[4, 1, 3], [2, 0, 5],
     * [3, 2, 2]] is assigned columns [1, 0, 2] at a total cost of 5.
     */
    @Test
    void documentedExampleOfAReferenceLibrary() {
        double[] cost = {4, 1, 3, 2, 0, 5, 3, 2, 2};
        assertThat(LinearAssignment.minimise(cost, 3, 3)).containsExactly(1, 0, 2);
    }

    /** Total costs computed with SciPy 1.17.1's {@code linear_sum_assignment} on the same matrices. */
    @Test
    void rectangularMatricesCostWhatAReferenceLibraryFinds() {
        double[] wide = {10, 10, 8, 11, 9, 8, 1, 1, 9, 7, 4, 10};
        assertThat(sum(wide, 4, LinearAssignment.minimise(wide, 3, 4))).isEqualTo(15);
        double[] tall = {10, 9, 9, 10, 8, 7, 8, 1, 4, 11, 1, 10};
        assertThat(sum(tall, 3, LinearAssignment.minimise(tall, 4, 3))).isEqualTo(15);
    }

    @Test
    void agreesWithEveryPermutationTried() {
        long seed = 20260101L;
        Random random = new Random(seed);
        for (int round = 0; round < 500; round++) {
            int rows = random.nextInt(6);
            int columns = random.nextInt(6);
            double[] cost = random.doubles((long) rows * columns, -5, 5).toArray();
            int[] found = LinearAssignment.minimise(cost, rows, columns);
            int[] greatest = LinearAssignment.maximise(cost, rows, columns);
            String where = "seed " + seed + ", round " + round;
            assertThat(found).as(where).hasSize(rows);
            assertThat(sum(cost, columns, found))
                    .as(where)
                    .isCloseTo(best(cost, rows, columns, 1), Offset.offset(1e-12));
            assertThat(sum(cost, columns, greatest))
                    .as(where)
                    .isCloseTo(-best(cost, rows, columns, -1), Offset.offset(1e-12));
        }
    }

    private static double sum(double[] cost, int columns, int[] columnOfRow) {
        double sum = 0;
        for (int row = 0; row < columnOfRow.length; row++) {
            sum += columnOfRow[row] < 0 ? 0 : cost[row * columns + columnOfRow[row]];
        }
        return sum;
    }

    /** Least sum of sign times cost over all assignments of the shorter side, by trying each. */
    private static double best(double[] cost, int rows, int columns, int sign) {
        return tryFrom(cost, rows, columns, sign, 0, 0, Math.max(0, rows - columns));
    }

    private static double tryFrom(double[] cost, int rows, int columns, int sign, int row, int used, int skips) {
        if (row == rows) {
            return 0;
        }
        double best =
                skips > 0 ? tryFrom(cost, rows, columns, sign, row + 1, used, skips - 1) : Double.POSITIVE_INFINITY;
        for (int column = 0; column < columns; column++) {
            if ((used & (1 << column)) == 0) {
                double rest = tryFrom(cost, rows, columns, sign, row + 1, used | (1 << column), skips);
                best = Math.min(best, sign * cost[row * columns + column] + rest);
            }
        }
        return best;
    }
}
