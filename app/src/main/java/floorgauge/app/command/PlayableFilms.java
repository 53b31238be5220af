package floorgauge.app.command;

import floorgauge.app.chain.LightCopies;
import floorgauge.app.store.Films;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.court.failure.MendableException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Sees to it that the review page can play the films: where a browser cannot, a light copy is made once and played instead. */
final class PlayableFilms {

    private final Films films;
    private final LightCopies copies;

    PlayableFilms(Store store, LightCopies copies) {
        this.films = new Films(store);
        this.copies = copies;
    }

    /**
     * Copies made earlier are taken at once; the others are made one after the other by a thread of their own, which ends with the
     * program.
     *
     * @param notice told what is being done, blank when all is
     * @param problems takes a line for each film that cannot be copied
     */
    void makeInBackground(Consumer<String> notice, Consumer<String> problems) {
        List<StoredFilm> missing = films.all().stream()
                .map(Films.Listed::film)
                .filter(film -> needsCopy(film, problems))
                .filter(film -> !takeEarlier(film))
                .toList();
        if (missing.isEmpty()) {
            return;
        }
        Thread maker = new Thread(() -> makeAll(missing, notice, problems), "light-copies");
        maker.setDaemon(true);
        maker.start();
    }

    /** Makes the copies; in order, here and now. */
    void makeAll(List<StoredFilm> missing, Consumer<String> notice, Consumer<String> problems) {
        for (int i = 0; i < missing.size(); i++) {
            StoredFilm film = missing.get(i);
            notice.accept("A playable copy of " + film.name() + " is being made, " + (i + 1) + " of " + missing.size()
                    + "; frames are shown until it is there.");
            try {
                films.setFilm(film.id(), Optional.of(copies.make(film.film().orElseThrow(), film.sha256())));
            } catch (MendableException e) {
                problems.accept(e.getMessage());
            }
        }
        notice.accept("");
    }

    private boolean takeEarlier(StoredFilm film) {
        Optional<Path> made = copies.made(film.sha256());
        made.ifPresent(copy -> films.setFilm(film.id(), Optional.of(copy)));
        return made.isPresent();
    }

    private static boolean needsCopy(StoredFilm film, Consumer<String> problems) {
        if (film.film().filter(Files::isRegularFile).isEmpty()) {
            return false;
        }
        try {
            return !LightCopies.isPlayable(film.film().get());
        } catch (MendableException e) {
            problems.accept(e.getMessage());
            return false;
        }
    }
}
