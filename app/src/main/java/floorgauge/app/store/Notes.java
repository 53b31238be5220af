package floorgauge.app.store;

import java.time.Instant;
import java.util.Optional;

/** What the analyst wrote about a whole practice. Safe for use by several threads. */
public final class Notes {

    /** Longest note kept, in characters. */
    public static final int LONGEST = 4000;

    /** The whole film, where a possession's number would stand. */
    private static final int WHOLE_FILM = 0;

    private final Store store;

    public Notes(Store store) {
        this.store = store;
    }

    /** The note on a film; empty where there is none. */
    public Optional<String> ofFilm(String filmId) {
        return store.jdbi()
                .withHandle(h -> h.createQuery("SELECT body FROM notes WHERE id = :id")
                        .bind("id", id(filmId))
                        .mapTo(String.class)
                        .findOne());
    }

    /**
     * Keeps a note in place of the one before; a blank one takes it away.
     *
     * @throws IllegalArgumentException where it is too long
     */
    public void keep(String filmId, String text) {
        if (text.length() > LONGEST) {
            throw new IllegalArgumentException("a note has at most " + LONGEST + " characters");
        }
        store.jdbi().useTransaction(h -> {
            h.createUpdate("DELETE FROM notes WHERE id = :id")
                    .bind("id", id(filmId))
                    .execute();
            if (!text.isBlank()) {
                h.createUpdate("INSERT INTO notes (id, film_id, possession_number, body, written_at)"
                                + " VALUES (:id, :film, :possession, :body, :at)")
                        .bind("id", id(filmId))
                        .bind("film", filmId)
                        .bind("possession", WHOLE_FILM)
                        .bind("body", text.strip())
                        .bind("at", Instant.now().toString())
                        .execute();
            }
        });
    }

    private static String id(String filmId) {
        return filmId + "-" + WHOLE_FILM;
    }
}
