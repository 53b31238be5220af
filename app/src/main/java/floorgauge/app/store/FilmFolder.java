package floorgauge.app.store;

import java.nio.file.Path;

/** Where the files of a film's results lie. */
public final class FilmFolder {

    private FilmFolder() {}

    /** Its table of tracks. */
    public static Path tracks(StoredFilm film) {
        return film.folder().resolve(FilmPlaces.FILE);
    }
}
