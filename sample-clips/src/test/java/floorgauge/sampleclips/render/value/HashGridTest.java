package floorgauge.sampleclips.render.value;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class HashGridTest {

    private static final long SEED = 77;
    private final HashGrid grid = new HashGrid(SEED, -3, 4, 0, 2);

    @Test
    void aGridOfOneValueIsThatValue() {
        HashGrid one = new HashGrid(SEED, 5, 5, -6, -6);
        assertThat(one.unit(5, -6)).isEqualTo(Hash.unit(SEED, 5, -6));
        assertThat(one.noise(5.5, -5.5)).isEqualTo(Hash.noise(SEED, 5.5, -5.5));
    }

    @Test
    void givesWhatHashingGivesInsideAtTheEdgesAndBeyond() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 2000; i++) {
            double x = random.nextDouble(-8, 9);
            double y = random.nextDouble(-5, 7);
            assertThat(grid.noise(x, y)).as("noise at %s, %s", x, y).isEqualTo(Hash.noise(SEED, x, y));
        }
        for (int a = -5; a <= 6; a++) {
            for (int b = -2; b <= 4; b++) {
                assertThat(grid.unit(a, b)).isEqualTo(Hash.unit(SEED, a, b));
                assertThat(grid.noise(a, b)).isEqualTo(Hash.noise(SEED, a, b));
            }
        }
    }
}
