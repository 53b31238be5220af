package floorgauge.vision.crew;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Hands work to a crew and takes the results in the order in which the work was handed in, on the thread that hands it in. Waits
 * where twice as much is under way as there are threads, so that memory stays bounded. Not safe for use by several threads.
 *
 * @param <N> the tools of the crew's threads
 */
public final class InOrder<N extends AutoCloseable> {

    private static final int WAITING_FOR_EACH_THREAD = 2;

    private final Crew<N> crew;
    private final int most;
    private final Deque<Piece<?>> pieces = new ArrayDeque<>();

    /** Work under way, and who takes its result. */
    private record Piece<T>(Future<T> work, Consumer<T> taker) {

        void take() {
            taker.accept(result(work));
        }
    }

    public InOrder(Crew<N> crew) {
        this.crew = crew;
        this.most = WAITING_FOR_EACH_THREAD * crew.members().size();
    }

    /**
     * Hands in work; first takes what is done.
     *
     * @param taker hears the result, in a later call of this object
     * @throws RuntimeException what earlier work threw
     */
    public <T> void submit(Function<N, T> work, Consumer<T> taker) {
        while (!pieces.isEmpty()
                && (pieces.size() >= most || pieces.peek().work().isDone())) {
            pieces.remove().take();
        }
        pieces.add(new Piece<>(crew.submit(work), taker));
    }

    /**
     * Takes all results that are still to come.
     *
     * @throws RuntimeException what the work threw
     */
    public void finish() {
        while (!pieces.isEmpty()) {
            pieces.remove().take();
        }
    }

    /** Waits until nothing is under way and forgets the results: when something went wrong and what the work uses is to be freed. */
    public void abandon() {
        while (!pieces.isEmpty()) {
            try {
                result(pieces.remove().work());
            } catch (RuntimeException e) {
                System.getLogger(InOrder.class.getName()).log(System.Logger.Level.DEBUG, "abandoned work failed", e);
            }
        }
    }

    private static <T> T result(Future<T> work) {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return work.get();
                } catch (InterruptedException e) {
                    // Native code is not cut off in the middle; the interruption is told when the work is done.
                    interrupted = true;
                } catch (ExecutionException e) {
                    if (e.getCause() instanceof RuntimeException cause) {
                        throw cause;
                    }
                    if (e.getCause() instanceof Error cause) {
                        throw cause;
                    }
                    throw new IllegalStateException("work failed", e.getCause());
                }
            }
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
