package floorgauge.app.review;

import floorgauge.app.store.Films;
import floorgauge.app.store.StoredFilm;
import floorgauge.court.failure.MendableException;
import java.util.List;
import java.util.function.Consumer;

/** Sees to it that the page can play the films: where a browser cannot, a light copy is made once. */
final class FilmPreparation {

    private final Films films;
    private final ShownFilms shown;

    FilmPreparation(Films films, ShownFilms shown) {
        this.films = films;
        this.shown = shown;
    }

    /**
     * Makes the copies that are missing, the newest practice's first.
     *
     * @param notice told what is being made; blank when all is
     * @param problems takes a line for each film that cannot be copied
     */
    void run(Consumer<String> notice, Consumer<String> problems) {
        List<StoredFilm> missing = films.all().stream()
                .map(Films.Listed::film)
                .filter(shown::needsCopy)
                .toList();
        for (int i = 0; i < missing.size(); i++) {
            StoredFilm film = missing.get(i);
            notice.accept("A copy of " + film.name() + " that the browser can play is being made, " + (i + 1) + " of "
                    + missing.size() + "; until it is there the floor is shown without the film.");
            try {
                shown.prepare(film);
            } catch (MendableException e) {
                problems.accept(e.getMessage());
            }
        }
        if (!missing.isEmpty()) {
            notice.accept("");
        }
    }
}
