package floorgauge.vision.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class StageTimesTest {

    private static final double WORK_SECONDS = 0.02;

    private final StageTimes times = new StageTimes();

    @Test
    void nothingDoneTookNoTime() {
        assertThat(times.seconds()).isEmpty();
    }

    @Test
    void stagesKeepTheOrderInWhichTheyBegan() {
        times.during("read", () -> {});
        times.during("look", () -> {});
        times.during("read", () -> {});
        assertThat(times.seconds().keySet()).containsExactly("read", "look");
    }

    @Test
    void aStageInsideAnotherIsNotCountedTwice() {
        long begun = System.nanoTime();
        int answer = times.during(
                "outer",
                () -> times.during("inner", () -> {
                    work();
                    return 42;
                }));
        double whole = (System.nanoTime() - begun) / 1e9;
        assertThat(answer).isEqualTo(42);
        assertThat(times.seconds().get("inner")).isGreaterThanOrEqualTo(WORK_SECONDS);
        assertThat(times.seconds().get("outer") + times.seconds().get("inner")).isBetween(WORK_SECONDS, whole);
    }

    @Test
    void workThatFailsHasTakenItsTimeToo() {
        assertThatThrownBy(() -> times.during("read", (Runnable) () -> {
                    work();
                    throw new IllegalStateException("broken");
                }))
                .hasMessage("broken");
        assertThat(times.seconds().get("read")).isGreaterThanOrEqualTo(WORK_SECONDS);
    }

    /** Keeps this thread busy for a while. */
    private static void work() {
        long until = System.nanoTime() + (long) (WORK_SECONDS * 1e9);
        while (System.nanoTime() < until) {
            Thread.onSpinWait();
        }
    }
}
