package floorgauge.sampleclips.scenario;

import floorgauge.court.failure.MendableException;

/** A scenario that can't be read or can't be played; says file, line and what was expected. */
public final class ScenarioException extends MendableException {

    private static final long serialVersionUID = 1L;

    /**
     * @param file name of the scenario's file
     * @param line from 1
     * @param what what is wrong and what was expected
     */
    public ScenarioException(String file, int line, String what) {
        super(file + ", line " + line + ": " + what);
    }

    ScenarioException(String message) {
        super(message);
    }
}
