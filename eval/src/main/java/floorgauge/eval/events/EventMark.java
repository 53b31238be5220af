package floorgauge.eval.events;

import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Tick;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.LabelledFigure;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * An event as scoring sees it, from a label or from a finding.
 *
 * @param id unique on its side
 * @param kind what it is about
 * @param label the kind within its kind; empty where it is not told
 * @param momentSeconds what times are compared by: the decisive moment where there is one, else the start
 * @param fromSeconds start
 * @param toSeconds end, at or after the start
 * @param roles who had them
 * @param figures by name, SI
 * @param probability that it is real; 1 for a label
 * @param grade a coach's, 1 to 5; empty for none
 * @param cantTell what the annotator could not tell of it
 */
public record EventMark(
        String id,
        FindingKind kind,
        Optional<String> label,
        double momentSeconds,
        double fromSeconds,
        double toSeconds,
        SortedMap<Role, SortedSet<Integer>> roles,
        SortedMap<String, Double> figures,
        double probability,
        OptionalInt grade,
        Set<String> cantTell) {

    /** Words of the ticks that mark a decisive moment: the least distance of a screen, the release of a pass. */
    private static final Set<String> DECISIVE = Set.of("screen", "release");

    public EventMark {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(grade, "grade");
        roles = Collections.unmodifiableSortedMap(new TreeMap<>(roles));
        figures = Collections.unmodifiableSortedMap(new TreeMap<>(figures));
        cantTell = Set.copyOf(cantTell);
        if (!(toSeconds >= fromSeconds) || !Double.isFinite(momentSeconds)) {
            throw new IllegalArgumentException(
                    "an event ends after its start: " + fromSeconds + ", " + momentSeconds + ", " + toSeconds);
        }
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + probability);
        }
    }

    /** A labelled event. */
    public static EventMark of(LabelledEvent event) {
        SortedMap<String, Double> figures = new TreeMap<>();
        for (LabelledFigure figure : event.figures()) {
            figures.put(figure.name(), figure.value());
        }
        return new EventMark(
                event.id(),
                event.kind(),
                event.label(),
                event.atSeconds().orElse(event.fromSeconds()),
                event.fromSeconds(),
                event.toSeconds(),
                byRole(event.roles()),
                figures,
                1,
                event.grade(),
                Set.copyOf(event.cantTell()));
    }

    /**
     * A finding.
     *
     * @param id unique on its side
     */
    public static EventMark of(Finding finding, String id) {
        SortedMap<String, Double> figures = new TreeMap<>();
        finding.figures().forEach(f -> figures.put(f.name(), f.value()));
        double moment = finding.ticks().stream()
                .filter(t -> DECISIVE.contains(t.words()))
                .mapToDouble(Tick::timeSeconds)
                .findFirst()
                .orElse(finding.fromSeconds());
        return new EventMark(
                id,
                finding.kind(),
                finding.label().isBlank() ? Optional.empty() : Optional.of(finding.label()),
                moment,
                finding.fromSeconds(),
                finding.toSeconds(),
                byRole(finding.roles()),
                figures,
                finding.probability(),
                OptionalInt.empty(),
                Set.of());
    }

    /** All findings of a film, numbered in order. */
    public static List<EventMark> of(List<Finding> findings) {
        List<EventMark> marks = new ArrayList<>();
        for (Finding finding : findings) {
            marks.add(of(finding, "finding " + (marks.size() + 1)));
        }
        return marks;
    }

    /** Whether the annotator could not tell if it took place at all: such an event counts neither as found nor as missed. */
    public boolean doubtful() {
        return cantTell.contains(LabelledEvent.EXISTENCE);
    }

    static SortedMap<Role, SortedSet<Integer>> byRole(List<RoleHolder> holders) {
        SortedMap<Role, SortedSet<Integer>> roles = new TreeMap<>();
        for (RoleHolder holder : holders) {
            roles.computeIfAbsent(holder.role(), r -> new TreeSet<>()).add(holder.trackId());
        }
        return roles;
    }
}
