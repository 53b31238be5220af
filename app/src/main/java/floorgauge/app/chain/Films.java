package floorgauge.app.chain;

import floorgauge.vision.film.FilmInfo;
import floorgauge.vision.film.FilmReader;
import java.nio.file.Path;

/** What a film's container says, read in one call. */
public final class Films {

    private Films() {}

    /** @throws floorgauge.vision.film.FilmException where it is not a film that can be read */
    public static FilmInfo info(Path film) {
        try (FilmReader reader = FilmReader.open(film)) {
            return reader.info();
        }
    }
}
