package floorgauge.eval.assignment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.eval.assignment.SparseAssignment.Entry;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class SparseAssignmentTest {

    @Test
    void nothingGiven() {
        assertThat(SparseAssignment.maximise(List.of(), 0, 0)).isEmpty();
        assertThat(SparseAssignment.maximise(List.of(), 2, 5)).containsExactly(-1, -1);
    }

    @Test
    void pairsThatAreNotGivenAreNeverChosen() {
        List<Entry> entries = List.of(new Entry(0, 0, 3), new Entry(1, 0, 2));
        assertThat(SparseAssignment.maximise(entries, 2, 2)).containsExactly(0, -1);
    }

    @Test
    void aPairGivesWayWhereThatIsWorthMore() {
        List<Entry> entries = List.of(new Entry(2, 7, 1), new Entry(0, 3, 5), new Entry(0, 4, 4), new Entry(1, 3, 4.5));
        assertThat(SparseAssignment.maximise(entries, 3, 8)).containsExactly(4, 3, 7);
    }

    @Test
    void refusesValuesOfNothing() {
        assertThatThrownBy(() -> new Entry(0, 0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Entry(-1, 0, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Entry(0, -1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Entry(0, 0, Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void worthAsMuchAsTheDenseMatrix() {
        long seed = 7L;
        Random random = new Random(seed);
        for (int round = 0; round < 200; round++) {
            int rows = 1 + random.nextInt(12);
            int columns = 1 + random.nextInt(12);
            double[] dense = new double[rows * columns];
            List<Entry> entries = new ArrayList<>();
            for (int i = 0; i < dense.length; i++) {
                if (random.nextInt(5) == 0) {
                    dense[i] = 0.01 + random.nextDouble();
                    entries.add(new Entry(i / columns, i % columns, dense[i]));
                }
            }
            int[] sparse = SparseAssignment.maximise(entries, rows, columns);
            assertThat(worth(dense, columns, sparse))
                    .as("seed %d, round %d", seed, round)
                    .isCloseTo(
                            worth(dense, columns, LinearAssignment.maximise(dense, rows, columns)),
                            Offset.offset(1e-12));
            for (int row = 0; row < rows; row++) {
                assertThat(sparse[row] < 0 || dense[row * columns + sparse[row]] > 0)
                        .isTrue();
            }
        }
    }

    /** A chain of 100,000 moments, each near its two neighbours: far too many for a matrix. */
    @Test
    void aLongChainTakesMemoryOfItsLength() {
        int length = 100_000;
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < length; i++) {
            entries.add(new Entry(i, i, 1));
            if (i > 0) {
                entries.add(new Entry(i, i - 1, 1.5));
            }
        }
        int[] chosen = SparseAssignment.maximise(entries, length, length);
        assertThat(chosen[0]).isEqualTo(-1);
        assertThat(chosen[1]).isZero();
        assertThat(chosen[length - 1]).isEqualTo(length - 2);
    }

    private static double worth(double[] dense, int columns, int[] columnOfRow) {
        double sum = 0;
        for (int row = 0; row < columnOfRow.length; row++) {
            sum += columnOfRow[row] < 0 ? 0 : dense[row * columns + columnOfRow[row]];
        }
        return sum;
    }
}
