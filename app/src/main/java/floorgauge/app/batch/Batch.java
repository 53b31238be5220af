package floorgauge.app.batch;

import floorgauge.court.failure.MendableException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Measures films one after the other; a film that fails is reported and the rest goes on. */
public final class Batch {

    private final FilmMeasurer measurer;
    private final ResultsFolder results;
    private final BatchReport report;
    private int failed;
    private int broken;

    public Batch(FilmMeasurer measurer, ResultsFolder results, BatchReport report) {
        this.measurer = measurer;
        this.results = results;
        this.report = report;
    }

    /**
     * How a batch went.
     *
     * @param failed films that the user must mend something for
     * @param broken films that met a bug
     */
    public record Outcome(int failed, int broken) {}

    /**
     * A film that must be measured.
     *
     * @param film where it lies
     * @param sha256 of its bytes
     * @param seconds its length
     */
    private record Job(Path film, String sha256, double seconds) {}

    /** Measures all that is not done already. */
    public Outcome run(List<Path> films) {
        List<Job> jobs = new ArrayList<>();
        for (Path film : films) {
            guarded(film, () -> job(film).ifPresent(jobs::add));
        }
        report.begin(jobs.size(), jobs.stream().mapToDouble(Job::seconds).sum());
        double before = 0;
        for (int i = 0; i < jobs.size(); i++) {
            Job job = jobs.get(i);
            double secondsBefore = before;
            report.film(i + 1, job.film());
            guarded(job.film(), () -> measure(job, secondsBefore));
            before += job.seconds();
            report.reached(before);
        }
        return new Outcome(failed, broken);
    }

    private Optional<Job> job(Path film) {
        String sha256 = measurer.digest(film);
        Optional<Path> done =
                results.done(film, sha256, measurer.settingsFor(film).keyFor(sha256));
        if (done.isPresent()) {
            report.doneBefore(film, done.get());
            return Optional.empty();
        }
        return Optional.of(new Job(film, sha256, measurer.durationSeconds(film)));
    }

    private void measure(Job job, double secondsBefore) {
        ResultsFolder.Contents contents = measurer.measure(
                job.film(),
                job.sha256(),
                reached -> report.reached(secondsBefore + Math.min(reached, job.seconds())),
                line -> report.warned(job.film(), line));
        report.measured(job.film(), results.write(job.film(), job.sha256(), contents));
    }

    private void guarded(Path film, Runnable work) {
        try {
            work.run();
        } catch (MendableException e) {
            failed++;
            report.failed(film, e.getMessage());
        } catch (RuntimeException e) {
            broken++;
            report.broke(film, e);
        }
    }
}
