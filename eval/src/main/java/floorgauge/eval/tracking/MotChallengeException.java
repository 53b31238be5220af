package floorgauge.eval.tracking;

import floorgauge.court.failure.MendableException;
import java.nio.file.Path;

/** A MOTChallenge text that cannot be read: says the file, the line, the column and what was expected there. */
public final class MotChallengeException extends MendableException {

    private static final long serialVersionUID = 1L;

    MotChallengeException(Path file, long line, String where, String expected, String found) {
        super(file + ", line " + line + ", " + where + ": expected " + expected + ", found " + found);
    }

    MotChallengeException(String message, Throwable cause) {
        super(message, cause);
    }
}
