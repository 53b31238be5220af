package floorgauge.events.script;

import floorgauge.court.failure.MendableException;

/** A script that cannot be run: the message names the line, what is wrong, and what to write instead. */
public final class ScriptException extends MendableException {

    private static final long serialVersionUID = 1L;

    ScriptException(String source, int line, String message) {
        super(source + ", line " + line + ": " + message);
    }
}
