package floorgauge.sampleclips.render.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FrameTimesTest {

    @Test
    void turnsAwayAnImpossibleRate() {
        assertThatThrownBy(() -> FrameTimes.even(0, 1)).hasMessageContaining("frame rate");
    }

    @Test
    void spacesEvenFramesEvenly() {
        FrameTimes times = FrameTimes.even(60_000 / 1001.0, 2);
        assertThat(times.count()).isEqualTo(119);
        assertThat(times.at(100)).isCloseTo(100 * 1001 / 60_000.0, within(1e-12));
    }

    @Test
    void variableFramesGoForwardAndLeaveGaps() {
        FrameTimes times = FrameTimes.variable(30, 20, 5);
        double widest = 0;
        for (int i = 1; i < times.count(); i++) {
            double step = times.at(i) - times.at(i - 1);
            assertThat(step).isGreaterThan(0.7 / 30);
            widest = Math.max(widest, step);
        }
        assertThat(widest).isGreaterThan(1.7 / 30);
        assertThat(times.count()).isBetween(540, 599);
    }
}
