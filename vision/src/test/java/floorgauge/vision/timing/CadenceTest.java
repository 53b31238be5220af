package floorgauge.vision.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CadenceTest {

    private static int taken(Cadence cadence, double framesPerSecond) {
        return (int) IntStream.range(0, (int) Math.round(60 * framesPerSecond))
                .mapToDouble(i -> Math.round(1000 * i / framesPerSecond) / 1000.0)
                .filter(cadence::isDue)
                .count();
    }

    @ParameterizedTest
    @CsvSource({"5, 5", "15, 15", "20, 10", "24, 12", "25, 12.5", "30, 10", "29.97, 9.99", "50, 10", "59.94, 9.99"})
    void noFartherApartThanATenthOfASecond(double framesPerSecond, double looksPerSecond) {
        assertThat(taken(Cadence.atMost(0.1), framesPerSecond))
                .isBetween((int) (60 * looksPerSecond) - 1, (int) (60 * looksPerSecond) + 1);
    }

    @ParameterizedTest
    @CsvSource({"25, 12.5", "30, 15", "50, 16.67", "15, 15"})
    void aboutFourteenTimesASecond(double framesPerSecond, double looksPerSecond) {
        assertThat(taken(Cadence.about(0.07), framesPerSecond))
                .isBetween((int) (60 * looksPerSecond) - 1, (int) (60 * looksPerSecond) + 1);
    }

    @Test
    void theFirstFrameIsTakenWheneverItComes() {
        assertThat(Cadence.about(0.1).isDue(-3)).isTrue();
        assertThat(Cadence.atMost(0.1).isDue(7)).isTrue();
    }
}
