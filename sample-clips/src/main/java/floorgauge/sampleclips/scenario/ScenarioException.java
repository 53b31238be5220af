package floorgauge.sampleclips.scenario;

import floorgauge.court.failure.MendableException;

/** A scenario that reads well but can't be played as written; says where and what was expected. */
public final class ScenarioException extends MendableException {

    private static final long serialVersionUID = 1L;

    ScenarioException(String message) {
        super(message);
    }

    ScenarioException(String file, int line, String what) {
        super(file + ", line " + line + ": " + what);
    }
}
