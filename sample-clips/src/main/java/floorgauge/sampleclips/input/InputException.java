package floorgauge.sampleclips.input;

import floorgauge.court.failure.MendableException;

/** A text file that does not hold what it should; says file, line, field and what was expected. */
public final class InputException extends MendableException {

    private static final long serialVersionUID = 1L;

    private final int line;

    /**
     * @param file name of the file
     * @param line from 1
     * @param what what is wrong and what was expected
     */
    public InputException(String file, int line, String what) {
        super(file + ", line " + line + ": " + what);
        this.line = line;
    }

    /** Line of the file, from 1. */
    public int line() {
        return line;
    }
}
