package floorgauge.events.standards;

import floorgauge.court.failure.MendableException;

/** A standards file that cannot be used: the message names the line, the key and what to write instead. */
public final class StandardsException extends MendableException {

    private static final long serialVersionUID = 1L;

    StandardsException(String source, int line, String message) {
        super(source + ", line " + line + ": " + message);
    }
}
