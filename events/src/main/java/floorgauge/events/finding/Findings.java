package floorgauge.events.finding;

import java.util.List;

/**
 * All that was measured on a film.
 *
 * @param possessions in order of time
 * @param notSeen what could not be measured on the whole film, and why
 */
public record Findings(List<PossessionFindings> possessions, List<NotSeen> notSeen) {

    public Findings {
        possessions = List.copyOf(possessions);
        notSeen = List.copyOf(notSeen);
    }

    /** The findings of all possessions, in order. */
    public List<Finding> all() {
        return possessions.stream().flatMap(p -> p.findings().stream()).toList();
    }

    /** The findings of one kind, in order. */
    public List<Finding> ofKind(FindingKind kind) {
        return all().stream().filter(f -> f.kind() == kind).toList();
    }
}
