package floorgauge.sampleclips.labels.scene;

import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.LabelledFigure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/** Gathers what is known of one event. */
final class EventMaker {

    private final FindingKind kind;
    private final Optional<String> label;
    private final double from;
    private final double to;
    private OptionalDouble at = OptionalDouble.empty();
    private final List<RoleHolder> roles = new ArrayList<>();
    private final List<LabelledFigure> figures = new ArrayList<>();
    private final SortedMap<String, String> words = new TreeMap<>();
    private final List<String> cantTell = new ArrayList<>();

    EventMaker(FindingKind kind, Optional<String> label, double from, double to) {
        this.kind = kind;
        this.label = label;
        this.from = from;
        this.to = to;
    }

    EventMaker at(double seconds) {
        at = OptionalDouble.of(Math.max(from, Math.min(to, seconds)));
        return this;
    }

    EventMaker role(Role role, int id) {
        roles.add(new RoleHolder(role, id));
        return this;
    }

    EventMaker figure(String name, double value) {
        figures.add(FigureNames.figure(name, value));
        return this;
    }

    /** A figure that may not exist; then it stands under what can't be told. */
    EventMaker figure(String name, OptionalDouble value) {
        value.ifPresentOrElse(v -> figure(name, v), () -> cantTell.add(name));
        return this;
    }

    EventMaker word(String name, String word) {
        words.put(name, word);
        return this;
    }

    EventMaker cantTell(String what) {
        cantTell.add(what);
        return this;
    }

    /** The event, under an id that its place in order of time gives it later. */
    LabelledEvent make() {
        return new LabelledEvent(
                "unnumbered",
                kind,
                label,
                from,
                at,
                to,
                roles,
                figures,
                words,
                OptionalInt.empty(),
                cantTell,
                Optional.empty());
    }
}
