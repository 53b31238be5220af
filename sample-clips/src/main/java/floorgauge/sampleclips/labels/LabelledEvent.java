package floorgauge.sampleclips.labels;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Something that happened, or a flag that it earns.
 *
 * @param id unique in its file
 * @param kind what it is about
 * @param label the kind within its kind, in the trade's words; empty where the annotator can't tell
 * @param fromSeconds start
 * @param atSeconds the decisive moment: of a screen the least distance between screener and user's defender, of a pass its release;
 *     empty where there is none
 * @param toSeconds end
 * @param roles who did what
 * @param figures what was measured; hand labels may have none
 * @param words what is told in words, such as the coverage of a ball screen, by its name
 * @param grade 1 (poor) to 5 (excellent) that a coach gives, of screens above all; empty for none
 * @param cantTell what can't be told of it: {@link #EXISTENCE} where it is not clear that it took place, else names of figures, of
 *     roles, of words, {@code label} or {@code grade}
 * @param note free text
 */
public record LabelledEvent(
        String id,
        FindingKind kind,
        Optional<String> label,
        double fromSeconds,
        OptionalDouble atSeconds,
        double toSeconds,
        List<RoleHolder> roles,
        List<LabelledFigure> figures,
        SortedMap<String, String> words,
        OptionalInt grade,
        List<String> cantTell,
        Optional<String> note) {

    /** In {@link #cantTell}: whether it took place at all. Such an event counts neither as hit nor as miss. */
    public static final String EXISTENCE = "whether it happened";

    public LabelledEvent {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(atSeconds, "atSeconds");
        Objects.requireNonNull(grade, "grade");
        Objects.requireNonNull(note, "note");
        roles = List.copyOf(roles);
        figures = List.copyOf(figures);
        words = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(words));
        cantTell = List.copyOf(cantTell);
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("an event ends after its start: " + fromSeconds + ", " + toSeconds);
        }
        if (grade.isPresent() && (grade.getAsInt() < 1 || grade.getAsInt() > 5)) {
            throw new IllegalArgumentException("a grade lies in 1 to 5: " + grade.getAsInt());
        }
    }

    /** The same events with the ids e1, e2 and so on, in the order given. */
    public static List<LabelledEvent> numbered(List<LabelledEvent> events) {
        List<LabelledEvent> numbered = new ArrayList<>();
        for (LabelledEvent event : events) {
            numbered.add(event.withId("e" + (numbered.size() + 1)));
        }
        return numbered;
    }

    private LabelledEvent withId(String newId) {
        return new LabelledEvent(
                newId, kind, label, fromSeconds, atSeconds, toSeconds, roles, figures, words, grade, cantTell, note);
    }

    /** The first holder of a role. */
    public OptionalInt holder(Role role) {
        return roles.stream()
                .filter(h -> h.role() == role)
                .mapToInt(RoleHolder::trackId)
                .findFirst();
    }

    /** The value of a figure. */
    public OptionalDouble figure(String name) {
        return figures.stream()
                .filter(f -> f.name().equals(name))
                .mapToDouble(LabelledFigure::value)
                .findFirst();
    }
}
