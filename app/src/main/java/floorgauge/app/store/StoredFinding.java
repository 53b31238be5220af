package floorgauge.app.store;

import floorgauge.events.finding.Finding;
import java.util.Objects;

/**
 * A finding in the store.
 *
 * @param id changes when the film is measured anew
 * @param filmId its film
 * @param possession number of its possession, from 1 through the film
 * @param number from 1 through the film
 * @param finding what was measured
 */
public record StoredFinding(String id, String filmId, int possession, int number, Finding finding) {

    public StoredFinding {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(filmId, "filmId");
        Objects.requireNonNull(finding, "finding");
    }
}
