package floorgauge.vision.timing;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Adds up the time that threads spend in named stages. A stage begun inside another on the same thread is taken out of the
 * outer one's time, so that a thread's stages together are never more than the time it took; those of several threads can be. Safe
 * for use by several threads.
 */
public final class StageTimes {

    private final Map<String, Long> nanoseconds = new LinkedHashMap<>();
    private final ThreadLocal<long[]> inner = ThreadLocal.withInitial(() -> new long[1]);

    /** Work that may fail. */
    @FunctionalInterface
    public interface Work<T, E extends Exception> {
        T run() throws E;
    }

    /** Does the work and adds its time, less that of stages inside it, to the stage; also when the work fails. */
    public <T, E extends Exception> T during(String stage, Work<T, E> work) throws E {
        add(stage, 0);
        long[] within = inner.get();
        long before = within[0];
        within[0] = 0;
        long begun = System.nanoTime();
        try {
            return work.run();
        } finally {
            long spent = System.nanoTime() - begun;
            add(stage, spent - within[0]);
            within[0] = before + spent;
        }
    }

    private synchronized void add(String stage, long spent) {
        nanoseconds.merge(stage, spent, Long::sum);
    }

    /** The same for work that yields nothing. */
    public void during(String stage, Runnable work) {
        during(stage, () -> {
            work.run();
            return Boolean.TRUE;
        });
    }

    /** Seconds spent by stage, in the order in which the stages first began. */
    public synchronized Map<String, Double> seconds() {
        Map<String, Double> seconds = new LinkedHashMap<>();
        nanoseconds.forEach((stage, spent) -> seconds.put(stage, spent / 1e9));
        return Collections.unmodifiableMap(seconds);
    }
}
