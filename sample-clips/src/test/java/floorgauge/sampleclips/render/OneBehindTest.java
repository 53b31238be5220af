package floorgauge.sampleclips.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class OneBehindTest {

    @Test
    void thereIsNothingToWaitForBeforeTheFirst() {
        try (OneBehind behind = new OneBehind()) {
            behind.await();
        }
    }

    @Test
    void tasksRunInOrder() {
        List<Integer> done = new ArrayList<>();
        try (OneBehind behind = new OneBehind()) {
            for (int i = 0; i < 50; i++) {
                int task = i;
                behind.await();
                assertThat(done).hasSize(i);
                behind.start(() -> done.add(task));
            }
            behind.await();
        }
        assertThat(done).isSorted().hasSize(50);
    }

    @Test
    void whatATaskThrowsReachesTheCallerAsItWas() {
        MendableException full = new MendableException("out: the disk is full; make room");
        try (OneBehind behind = new OneBehind()) {
            behind.start(() -> {
                throw full;
            });
            assertThatThrownBy(behind::await).isSameAs(full);
        }
    }

    @Test
    void closingWaitsForTheTaskThatRuns() {
        List<String> done = new ArrayList<>();
        try (OneBehind behind = new OneBehind()) {
            behind.start(() -> {
                Thread.onSpinWait();
                done.add("written");
            });
        }
        assertThat(done).containsExactly("written");
    }
}
