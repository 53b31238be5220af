package floorgauge.sampleclips.render;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * Does one task beside the caller while the caller prepares the next. Tasks run in order; each sees all that the caller and the
 * tasks before did before it was started.
 */
final class OneBehind implements AutoCloseable {

    private final ExecutorService executor = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "writing");
        thread.setDaemon(true);
        return thread;
    });
    private CompletableFuture<Void> running = CompletableFuture.completedFuture(null);

    /** Starts a task; the one before must have been waited for. */
    void start(Runnable task) {
        running = CompletableFuture.runAsync(task, executor);
    }

    /** Waits for the task that was started last; throws what it threw. */
    void await() {
        try {
            running.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException own) {
                throw own;
            }
            throw e;
        }
    }

    /** Waits for the task that was started last, however it ends. */
    @Override
    public void close() {
        running.handle((done, failure) -> done).join();
        executor.shutdown();
    }
}
