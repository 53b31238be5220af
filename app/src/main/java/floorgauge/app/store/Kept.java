package floorgauge.app.store;

import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Drawings that take a while to make, kept until the film is measured anew or its players change. */
public final class Kept {

    private final Store store;

    public Kept(Store store) {
        this.store = store;
    }

    /** Markup by possession number; empty where nothing is kept. */
    public Map<Integer, String> drawings(String filmId) {
        Map<Integer, String> drawings = new TreeMap<>();
        store.jdbi()
                .useHandle(h -> h.createQuery("SELECT possession_number, markup FROM drawings WHERE film_id = :film")
                        .bind("film", filmId)
                        .map((rows, context) -> Map.entry(rows.getInt(1), rows.getString(2)))
                        .forEach(e -> drawings.put(e.getKey(), e.getValue())));
        return drawings;
    }

    /** Keeps all of a film. */
    public void draw(String filmId, Map<Integer, String> drawings) {
        store.jdbi().useTransaction(h -> {
            h.createUpdate("DELETE FROM drawings WHERE film_id = :film")
                    .bind("film", filmId)
                    .execute();
            PreparedBatch batch = h.prepareBatch(
                    "INSERT INTO drawings (film_id, possession_number, markup) VALUES (:film, :number, :markup)");
            drawings.forEach((number, markup) -> batch.bind("film", filmId)
                    .bind("number", number)
                    .bind("markup", markup)
                    .add());
            if (batch.size() > 0) {
                batch.execute();
            }
        });
    }
}
