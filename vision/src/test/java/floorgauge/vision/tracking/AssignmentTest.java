package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class AssignmentTest {

    @Test
    void nothingToAssign() {
        assertThat(new Assignment(0, 0, 0).solve()).isEmpty();
        assertThat(new Assignment(0, 3, 0).solve()).isEmpty();
        assertThat(new Assignment(2, 0, 0).solve()).containsExactly(Assignment.NONE, Assignment.NONE);
    }

    @Test
    void aRowWithoutAPossiblePairIsLeftOut() {
        Assignment a = new Assignment(2, 1, 5);
        a.allow(1, 0, -1);
        assertThat(a.solve()).containsExactly(Assignment.NONE, 0);
    }

    @Test
    void aPairThatCostsMoreThanLeavingOutIsNotTaken() {
        Assignment a = new Assignment(1, 1, 0);
        a.allow(0, 0, 0.1);
        assertThat(a.solve()).containsExactly(Assignment.NONE);
    }

    @Test
    void theBestPairOfARowIsGivenUpForTheSum() {
        Assignment a = new Assignment(2, 2, 100);
        a.allow(0, 0, 1);
        a.allow(0, 1, 2);
        a.allow(1, 0, 1);
        a.allow(1, 1, 9);
        assertThat(a.solve()).containsExactly(1, 0);
    }

    /** The 3x3 case of H. W. Kuhn's textbook kind, its least sum found by hand: 1 + 2 + 2. */
    @Test
    void threeByThree() {
        double[][] costs = {{4, 1, 3}, {2, 0, 5}, {3, 2, 2}};
        Assignment a = new Assignment(3, 3, 100);
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                a.allow(i, j, costs[i][j]);
            }
        }
        assertThat(a.solve()).containsExactly(1, 0, 2);
    }

    @Test
    void badInputIsRefused() {
        Assignment a = new Assignment(1, 1, 0);
        assertThatThrownBy(() -> a.allow(0, 1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> a.allow(0, 0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void asCheapAsTryingEverything() {
        long seed = 20260;
        Random random = new Random(seed);
        for (int trial = 0; trial < 400; trial++) {
            int rows = random.nextInt(6);
            int columns = random.nextInt(6);
            double[][] costs = new double[rows][columns];
            Assignment a = new Assignment(rows, columns, 0.5);
            for (int i = 0; i < rows; i++) {
                for (int j = 0; j < columns; j++) {
                    costs[i][j] = random.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : random.nextGaussian();
                    if (costs[i][j] < Double.POSITIVE_INFINITY) {
                        a.allow(i, j, costs[i][j]);
                    }
                }
            }
            int[] found = a.solve();
            double sum = 0;
            boolean[] used = new boolean[columns];
            for (int i = 0; i < rows; i++) {
                if (found[i] == Assignment.NONE) {
                    sum += 0.5;
                } else {
                    assertThat(used[found[i]])
                            .as("seed %d, trial %d", seed, trial)
                            .isFalse();
                    used[found[i]] = true;
                    sum += costs[i][found[i]];
                }
            }
            assertThat(sum)
                    .as("seed %d, trial %d", seed, trial)
                    .isCloseTo(cheapest(costs, 0, new boolean[columns]), within(1e-9));
        }
    }

    private static double cheapest(double[][] costs, int row, boolean[] used) {
        if (row == costs.length) {
            return 0;
        }
        double least = 0.5 + cheapest(costs, row + 1, used);
        for (int j = 0; j < used.length; j++) {
            if (!used[j]) {
                used[j] = true;
                least = Math.min(least, costs[row][j] + cheapest(costs, row + 1, used));
                used[j] = false;
            }
        }
        return least;
    }
}
