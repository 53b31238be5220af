package floorgauge.app.review;

import floorgauge.court.failure.MendableException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Clips that are being cut, one after the other, beside the requests: cutting may take longer than a connection lives. Asked
 * for again while it is being cut, a clip is not cut twice. Safe for use by several threads.
 */
final class ClipJobs {

    private static final Logger LOG = LoggerFactory.getLogger(ClipJobs.class);

    private final Map<String, Future<String>> jobs = new ConcurrentHashMap<>();
    private final ExecutorService cutter = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "clips");
        thread.setDaemon(true);
        return thread;
    });

    /** @param cut makes the clip, and says in a sentence where it is */
    void start(String findingId, Callable<String> cut) {
        jobs.compute(findingId, (id, before) -> before == null || before.isDone() ? cutter.submit(cut) : before);
    }

    /**
     * What became of a clip.
     *
     * @return where it is; empty while it is being cut
     * @throws MendableException where it could not be cut
     * @throws Guard.Refused with 404 where none was asked for
     */
    Optional<String> done(String findingId) {
        Future<String> job = jobs.get(findingId);
        if (job == null) {
            throw Requests.missing();
        }
        if (!job.isDone()) {
            return Optional.empty();
        }
        try {
            return Optional.of(job.get());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof MendableException mendable) {
                throw mendable;
            }
            LOG.error("a clip could not be cut", e);
            throw new MendableException("the clip could not be cut; this is a bug in floorgauge, its log says more", e);
        }
    }
}
