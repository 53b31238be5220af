package floorgauge.court.failure;

/** A failure that the user can mend: its message says what is wrong, where, and what to do, in one line. */
public class MendableException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param message one line: what, where, what to do */
    public MendableException(String message) {
        super(message);
    }

    /**
     * @param message one line: what, where, what to do
     * @param cause what the library below reported
     */
    public MendableException(String message, Throwable cause) {
        super(message, cause);
    }
}
