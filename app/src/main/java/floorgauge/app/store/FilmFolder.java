package floorgauge.app.store;

import floorgauge.app.result.BallParquet;
import floorgauge.court.track.BallObservation;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Where the files of a film's results lie. */
public final class FilmFolder {

    private FilmFolder() {}

    /** The ball of a film between two times, seconds; empty where it was not looked for. */
    public static Optional<List<BallObservation>> ball(StoredFilm film, double fromSeconds, double toSeconds) {
        return BallParquet.read(film.folder().resolve(BallParquet.FILE), fromSeconds, toSeconds);
    }

    /** Its table of tracks. */
    public static Path tracks(StoredFilm film) {
        return film.folder().resolve(FilmPlaces.FILE);
    }
}
