package floorgauge.app.store;

import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.SpacingSample;
import java.util.List;
import java.util.Objects;

/**
 * A possession in the store.
 *
 * @param filmId its film
 * @param possession which
 * @param spacing every 0.04 s
 * @param notSeen what could not be measured through the whole of it
 */
public record StoredPossession(
        String filmId, Possession possession, List<SpacingSample> spacing, List<NotSeen> notSeen) {

    public StoredPossession {
        Objects.requireNonNull(filmId, "filmId");
        Objects.requireNonNull(possession, "possession");
        spacing = List.copyOf(spacing);
        notSeen = List.copyOf(notSeen);
    }
}
