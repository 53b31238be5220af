package floorgauge.vision.timing;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Adds up the wall-clock time spent in named stages of one thread's work. A stage begun inside another is taken out of
 * the outer one's time, so that the stages together are never more than the whole. Not safe for use by several threads.
 */
public final class StageTimes {

    private final Map<String, Long> nanoseconds = new LinkedHashMap<>();
    private long inner;

    /** Work that may fail. */
    @FunctionalInterface
    public interface Work<T, E extends Exception> {
        T run() throws E;
    }

    /** Does the work and adds its time, less that of stages inside it, to the stage; also when the work fails. */
    public <T, E extends Exception> T during(String stage, Work<T, E> work) throws E {
        nanoseconds.putIfAbsent(stage, 0L);
        long innerBefore = inner;
        inner = 0;
        long begun = System.nanoTime();
        try {
            return work.run();
        } finally {
            long spent = System.nanoTime() - begun;
            nanoseconds.merge(stage, spent - inner, Long::sum);
            inner = innerBefore + spent;
        }
    }

    /** The same for work that yields nothing. */
    public void during(String stage, Runnable work) {
        during(stage, () -> {
            work.run();
            return Boolean.TRUE;
        });
    }

    /** Seconds spent by stage, in the order in which the stages first began. */
    public Map<String, Double> seconds() {
        Map<String, Double> seconds = new LinkedHashMap<>();
        nanoseconds.forEach((stage, spent) -> seconds.put(stage, spent / 1e9));
        return Collections.unmodifiableMap(seconds);
    }
}
