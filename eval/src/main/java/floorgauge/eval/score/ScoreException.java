package floorgauge.eval.score;

import floorgauge.court.failure.MendableException;
import java.nio.file.Path;

/** Labels or results that cannot be scored: says the file, the field and what was expected. */
public final class ScoreException extends MendableException {

    private static final long serialVersionUID = 1L;

    /** @param field where in the file */
    public ScoreException(Path file, String field, String expected) {
        super(file + ", " + field + ": " + expected);
    }

    /** @param field where in the file */
    public ScoreException(Path file, String field, String expected, Throwable cause) {
        super(file + ", " + field + ": " + expected, cause);
    }
}
