package floorgauge.events.matchup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class AssignmentTest {

    private static final long SEED = 3;

    @Test
    void nobodyToShareOut() {
        assertThat(Assignment.least(new double[][] {})).isEmpty();
        assertThat(Assignment.least(new double[][] {{}, {}})).containsExactly(-1, -1);
        assertThat(Assignment.least(new double[][] {{4}, {1}})).containsExactly(-1, 0);
    }

    @Test
    void sumIsTheLeastOfAllPermutations() {
        Random random = new Random(SEED);
        for (int k = 0; k < 300; k++) {
            int rows = 1 + random.nextInt(5);
            int columns = rows + random.nextInt(2);
            double[][] cost = new double[rows][columns];
            for (double[] row : cost) {
                for (int c = 0; c < columns; c++) {
                    row[c] = random.nextInt(20);
                }
            }
            int[] got = Assignment.least(cost);
            double sum = 0;
            for (int r = 0; r < rows; r++) {
                sum += cost[r][got[r]];
            }
            assertThat(sum)
                    .as("seed %d, case %d", SEED, k)
                    .isCloseTo(best(cost, 0, new boolean[columns]), within(1e-9));
        }
    }

    private static double best(double[][] cost, int row, boolean[] taken) {
        if (row == cost.length) {
            return 0;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int c = 0; c < taken.length; c++) {
            if (!taken[c]) {
                taken[c] = true;
                least = Math.min(least, cost[row][c] + best(cost, row + 1, taken));
                taken[c] = false;
            }
        }
        return least;
    }
}
