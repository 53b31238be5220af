package floorgauge.vision.network;

import floorgauge.court.failure.MendableException;

/** A network that cannot be loaded: its file is missing or damaged. */
public class NetworkException extends MendableException {

    private static final long serialVersionUID = 1L;

    /** @param message one line: what, where, what to do */
    public NetworkException(String message) {
        super(message);
    }

    /**
     * @param message one line: what, where, what to do
     * @param cause what the engine reported
     */
    public NetworkException(String message, Throwable cause) {
        super(message, cause);
    }
}
