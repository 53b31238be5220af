package floorgauge.court.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.rules.RuleSet;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CourtOverTimeTest {

    private static final CourtCalibration LOST = CourtCalibration.none(RuleSet.fiba(), 640, 360, "lost");
    private static final CourtCalibration KNOWN = CourtCalibration.known(
            RuleSet.fiba(), new double[] {0.02, 0, -6.4, 0, -0.05, 12.5, 0, 0.002, 0.6}, 640, 360);

    @Test
    void nothing() {
        assertThatThrownBy(() -> CourtOverTime.moving(Map.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void picturesOfTwoSizes() {
        CourtCalibration other = CourtCalibration.none(RuleSet.fiba(), 320, 180, "lost");
        assertThatThrownBy(() -> CourtOverTime.moving(Map.of(0.0, KNOWN, 0.1, other)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aStillCameraIsTheSameAtAnyTime() {
        CourtOverTime still = CourtOverTime.still(KNOWN);
        assertThat(still.isStill()).isTrue();
        assertThat(still.at(-5)).isSameAs(KNOWN);
        assertThat(still.at(1e6)).isSameAs(KNOWN);
        assertThat(still.foundShare()).isEqualTo(1);
        assertThat(still.stretches()).isEmpty();
    }

    @Test
    void theNearestPictureHolds() {
        CourtOverTime moving = CourtOverTime.moving(Map.of(1.0, LOST, 1.04, KNOWN, 1.08, KNOWN, 1.12, LOST));
        assertThat(moving.isStill()).isFalse();
        assertThat(moving.first()).isEqualTo(KNOWN);
        assertThat(moving.at(1.01)).isEqualTo(LOST);
        assertThat(moving.at(1.03)).isEqualTo(KNOWN);
        assertThat(moving.at(5).status()).isEqualTo(CalibrationStatus.NONE);
        assertThat(moving.foundShare()).isEqualTo(0.5);
    }

    @Test
    void lossesAreStretches() {
        CourtOverTime moving = CourtOverTime.moving(Map.of(1.0, LOST, 1.04, KNOWN, 1.08, KNOWN, 1.12, LOST));
        assertThat(moving.stretches())
                .containsExactly(
                        new CourtOverTime.Stretch(1.0, 1.0, CalibrationStatus.NONE, "lost"),
                        new CourtOverTime.Stretch(1.04, 1.08, CalibrationStatus.GOOD, "The camera is known."),
                        new CourtOverTime.Stretch(1.12, 1.12, CalibrationStatus.NONE, "lost"));
    }
}
