package floorgauge.app.batch;

import java.nio.file.Path;

/** Told what becomes of each film of a batch, in order. */
public interface BatchReport extends AutoCloseable {

    /** The films that must be measured are known, with their length together, as far as can be told. */
    void begin(int films, double filmSeconds);

    /** A film is about to be measured; {@code number} counts from 1 among those that must be. */
    void film(int number, Path film);

    /** So much of the length of all films together is done. */
    void reached(double filmSeconds);

    /** Something lessens the result of a film. */
    void warned(Path film, String line);

    /** A film's results lie in the folder. */
    void measured(Path film, Path results);

    /** A film was measured with the same settings before. */
    void doneBefore(Path film, Path results);

    /** A film could not be measured, for a reason that the user can mend. */
    void failed(Path film, String line);

    /** A film met a bug. */
    void broke(Path film, RuntimeException bug);

    @Override
    void close();
}
