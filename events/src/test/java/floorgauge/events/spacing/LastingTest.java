package floorgauge.events.spacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LastingTest {

    @Test
    void aStretchTooShortHasNoProbability() {
        assertThat(Lasting.probability(0, 3, 4, i -> 1)).isZero();
        assertThat(Lasting.probability(5, 4, 1, i -> 1)).isZero();
        assertThat(Lasting.probability(0, 4, 4, i -> 1)).isEqualTo(1);
    }

    @Test
    void itIsAsProbableAsTheLeastProbableInstantOfItsBestPart() {
        assertThat(Lasting.probability(0, 9, 4, i -> i == 2 ? 0.1 : 0.9)).isEqualTo(0.9);
        assertThat(Lasting.probability(0, 9, 8, i -> i == 2 ? 0.1 : 0.9)).isEqualTo(0.1);
    }

    @Test
    void theErrorOfALengthGrowsWithThatOfTheDistance() {
        assertThat(Lasting.error(0)).isEqualTo(0.04);
        assertThat(Lasting.error(0.1)).isCloseTo(Math.hypot(0.04, 0.1 * Math.sqrt(2)), within(1e-12));
    }
}
