package floorgauge.app.batch;

import floorgauge.app.result.RunSettings;
import java.nio.file.Path;

/** Measures one film. */
public interface FilmMeasurer {

    /** Everything beside a film that decides its result. */
    RunSettings settingsFor(Path film);

    /** The SHA-256 of a film's bytes. */
    String digest(Path film);

    /** How long a film is in seconds, for progress alone; 0 where it cannot be told. */
    double durationSeconds(Path film);

    /**
     * Measures a film.
     *
     * @return what writes the results
     * @throws floorgauge.court.failure.MendableException where the user must mend something first
     */
    ResultsFolder.Contents measure(Path film, String sha256, Progress progress, Warnings warnings);

    /** Told how far into the film the work has come. */
    @FunctionalInterface
    interface Progress {
        void reached(double filmSeconds);
    }

    /** Told, in one line each, what lessens a result without preventing it. */
    @FunctionalInterface
    interface Warnings {
        void warn(String line);
    }
}
