package floorgauge.app.review;

import floorgauge.app.chain.LightCopies;
import floorgauge.app.store.StoredFilm;
import floorgauge.court.failure.MendableException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Which file a browser is handed for a film: the film itself where it can be played, else the copy that was made of it. */
final class ShownFilms {

    private final LightCopies copies;
    private final Map<String, Boolean> playable = new ConcurrentHashMap<>();

    ShownFilms(LightCopies copies) {
        this.copies = copies;
    }

    /** The file; empty where the film was not found, or no copy is made yet. */
    Optional<Path> of(StoredFilm film) {
        Optional<Path> there = film.film().filter(Files::isRegularFile);
        return there.filter(f -> isPlayable(film, f)).or(() -> copies.made(film.sha256()));
    }

    /** Whether the film is there, cannot be played as it is, and has no copy yet. */
    boolean needsCopy(StoredFilm film) {
        return film.film().filter(Files::isRegularFile).isPresent() && of(film).isEmpty();
    }

    /** Makes the copy of a film that needs one. @throws MendableException where it cannot be made */
    void prepare(StoredFilm film) {
        film.film().filter(Files::isRegularFile).ifPresent(f -> copies.make(f, film.sha256()));
    }

    /** Known by the film's bytes and size, so that a film that was cut short since is looked at again. */
    private boolean isPlayable(StoredFilm film, Path file) {
        try {
            return playable.computeIfAbsent(film.sha256() + " " + Files.size(file), key -> reads(file));
        } catch (java.io.IOException e) {
            return false;
        }
    }

    private static boolean reads(Path file) {
        try {
            return FilmBytes.isPlayable(file) && LightCopies.isPlayable(file);
        } catch (MendableException e) {
            return false;
        }
    }
}
