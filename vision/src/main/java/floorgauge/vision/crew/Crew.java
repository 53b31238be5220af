package floorgauge.vision.crew;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Threads with tools of their own, such as networks that only one thread may use at a time. What a piece of work gives never
 * depends on how many threads there are, as long as all tools are alike and keep nothing from one piece to the next.
 *
 * @param <N> the tools of one thread; closed with the crew
 */
public final class Crew<N extends AutoCloseable> implements AutoCloseable {

    private final List<N> members = new ArrayList<>();
    private final BlockingQueue<N> idle = new LinkedBlockingQueue<>();
    private final ExecutorService threads;

    /**
     * @param size number of threads, at least 1
     * @param tools makes the tools of one thread
     */
    public Crew(int size, Supplier<N> tools) {
        if (size < 1) {
            throw new IllegalArgumentException("a crew has at least one thread: " + size);
        }
        try {
            for (int i = 0; i < size; i++) {
                members.add(tools.get());
            }
        } catch (RuntimeException e) {
            closeMembers();
            throw e;
        }
        idle.addAll(members);
        threads = Executors.newFixedThreadPool(size, work -> {
            Thread thread = new Thread(work, "floorgauge-crew");
            thread.setDaemon(true);
            return thread;
        });
    }

    /** The tools of all threads. */
    public List<N> members() {
        return List.copyOf(members);
    }

    /** Has a thread do the work as soon as one is free. */
    <T> Future<T> submit(Function<N, T> work) {
        return threads.submit(() -> {
            N tools = idle.take();
            try {
                return work.apply(tools);
            } finally {
                idle.add(tools);
            }
        });
    }

    /** Ends the threads and closes their tools. No work may be left. */
    @Override
    public void close() {
        threads.shutdown();
        closeMembers();
    }

    private void closeMembers() {
        for (N member : members) {
            try {
                member.close();
            } catch (Exception e) {
                throw new IllegalStateException("tools of a thread cannot be closed", e);
            }
        }
    }
}
