package floorgauge.app.store;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.RoleHolder;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Something that was judged, as it stood when it was judged first.
 *
 * @param id of the finding then, or made up for what was entered by hand
 * @param filmId its film
 * @param findingId the finding it is now; empty where the film was measured anew and nothing matches, and for what was
 *     entered by hand
 * @param byHand whether the analyst entered it
 * @param kind what it was about
 * @param label the kind within its kind
 * @param fromSeconds start
 * @param toSeconds end
 * @param roles who did what
 * @param sentence as it was shown
 * @param verdict the one that holds; empty where all were taken back
 */
public record Subject(
        String id,
        String filmId,
        Optional<String> findingId,
        boolean byHand,
        FindingKind kind,
        String label,
        double fromSeconds,
        double toSeconds,
        List<RoleHolder> roles,
        String sentence,
        Optional<Verdict> verdict) {

    public Subject {
        Objects.requireNonNull(findingId, "findingId");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(verdict, "verdict");
        roles = List.copyOf(roles);
    }
}
