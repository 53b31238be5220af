package floorgauge.events.finding;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * All that was measured in one possession.
 *
 * @param possession which
 * @param findings in order of start, then of kind
 * @param spacing every 0.04 s
 * @param trails everyone's smoothed way
 * @param notSeen what could not be measured through the whole of it, and why
 * @param script how it agrees with a script; empty where no script was given, or none has as few roles as there are attackers
 */
public record PossessionFindings(
        Possession possession,
        List<Finding> findings,
        List<SpacingSample> spacing,
        List<Trail> trails,
        List<NotSeen> notSeen,
        Optional<ScriptReading> script) {

    public PossessionFindings {
        Objects.requireNonNull(possession, "possession");
        Objects.requireNonNull(script, "script");
        findings = List.copyOf(findings);
        spacing = List.copyOf(spacing);
        trails = List.copyOf(trails);
        notSeen = List.copyOf(notSeen);
    }

    /** Held against no script. */
    public PossessionFindings(
            Possession possession,
            List<Finding> findings,
            List<SpacingSample> spacing,
            List<Trail> trails,
            List<NotSeen> notSeen) {
        this(possession, findings, spacing, trails, notSeen, Optional.empty());
    }
}
