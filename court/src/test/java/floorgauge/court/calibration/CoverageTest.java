package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

class CoverageTest {

    private static FloorPoint at(double x, double y) {
        return new FloorPoint(x, y);
    }

    @Test
    void noAreaCarriesNothing() {
        assertThat(Coverage.none().holds(at(0, 0))).isFalse();
        assertThat(Coverage.around(List.of(at(1, 1)), 2).holds(at(1, 1))).isFalse();
        assertThat(Coverage.around(List.of(at(0, 0), at(1, 1), at(2, 2)), 2).holds(at(1, 1)))
                .isFalse();
        assertThat(Coverage.around(List.of(at(1, 1), at(1, 1), at(1, 1)), 2).holds(at(1, 1)))
                .isFalse();
    }

    @Test
    void theHullLeavesOutWhatLiesWithin() {
        Coverage coverage = Coverage.around(List.of(at(0, 0), at(4, 0), at(2, 1), at(4, 3), at(0, 3), at(2, 0)), 0.5);
        assertThat(coverage.hull()).containsExactly(at(0, 0), at(4, 0), at(4, 3), at(0, 3));
        assertThat(coverage.areaSquareMetres()).isCloseTo(12, within(1e-12));
    }

    @Test
    void theMarginReachesBeyondTheHull() {
        Coverage coverage = Coverage.around(List.of(at(0, 0), at(4, 0), at(4, 3), at(0, 3)), 0.5);
        assertThat(coverage.holds(at(2, 1))).isTrue();
        assertThat(coverage.holds(at(4.4, 1))).isTrue();
        assertThat(coverage.holds(at(4.6, 1))).isFalse();
        assertThat(coverage.holds(at(4.4, 3.4))).isFalse();
    }
}
