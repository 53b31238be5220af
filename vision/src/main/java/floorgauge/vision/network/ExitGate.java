package floorgauge.vision.network;

import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.function.Supplier;

/**
 * Keeps native code from running while the process ends. When a batch is stopped by a signal, the JVM unloads PyTorch while
 * its other threads may still compute, which ends in a crash report instead of a quiet end. The gate is shut when the
 * process is told to end, after what runs has finished; a run that comes later waits for the end.
 */
final class ExitGate {

    private static final ReadWriteLock GATE = new ReentrantReadWriteLock();

    static {
        // The lock is never given back: the thread that holds it has ended by then.
        Runtime.getRuntime().addShutdownHook(new Thread(GATE.writeLock()::lock, "end of networks"));
    }

    private ExitGate() {}

    /** Runs native code that must not be cut off. */
    static <T> T during(Supplier<T> work) {
        GATE.readLock().lock();
        try {
            return work.get();
        } finally {
            GATE.readLock().unlock();
        }
    }
}
