package floorgauge.vision.film;

import floorgauge.court.failure.MendableException;
import java.nio.file.Path;

/** A film that cannot be read or written; the message names the file, says what is wrong and what to do, in one line. */
public class FilmException extends MendableException {

    private static final long serialVersionUID = 1L;

    /**
     * @param film the file
     * @param trouble what is wrong and what to do, without the file's name
     */
    public FilmException(Path film, String trouble) {
        super(film + ": " + trouble);
    }

    /**
     * @param film the file
     * @param trouble what is wrong and what to do, without the file's name
     * @param cause what the layer below reported
     */
    public FilmException(Path film, String trouble, Throwable cause) {
        super(film + ": " + trouble, cause);
    }
}
