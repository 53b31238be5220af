package floorgauge.sampleclips.render.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Runs independent pieces of work on a few threads. Pieces must not depend on which thread runs them, or when. */
final class Parallel implements AutoCloseable {

    /** One piece. */
    interface Piece {
        /** @param thread 0 to the number of threads, one piece at a time on each */
        void run(int index, int thread);
    }

    private final int threads;
    private final ExecutorService executor;

    Parallel(int threads) {
        this.threads = threads;
        executor = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "render");
            thread.setDaemon(true);
            return thread;
        });
    }

    void forEach(int count, Piece piece) {
        AtomicInteger next = new AtomicInteger();
        List<Future<?>> running = new ArrayList<>();
        for (int t = 0; t < threads; t++) {
            int thread = t;
            running.add(executor.submit(() -> {
                for (int i = next.getAndIncrement(); i < count; i = next.getAndIncrement()) {
                    piece.run(i, thread);
                }
            }));
        }
        for (Future<?> future : running) {
            await(future);
        }
    }

    private static void await(Future<?> future) {
        try {
            future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while rendering", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("rendering failed", e.getCause());
        }
    }

    @Override
    public void close() {
        executor.shutdownNow();
    }
}
