package floorgauge.events.finding;

import java.util.List;
import java.util.Objects;

/**
 * All that was measured in one possession.
 *
 * @param possession which
 * @param findings in order of start, then of kind
 * @param spacing every 0.04 s
 * @param trails everyone's smoothed way
 * @param notSeen what could not be measured through the whole of it, and why
 */
public record PossessionFindings(
        Possession possession,
        List<Finding> findings,
        List<SpacingSample> spacing,
        List<Trail> trails,
        List<NotSeen> notSeen) {

    public PossessionFindings {
        Objects.requireNonNull(possession, "possession");
        findings = List.copyOf(findings);
        spacing = List.copyOf(spacing);
        trails = List.copyOf(trails);
        notSeen = List.copyOf(notSeen);
    }
}
