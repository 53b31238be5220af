package floorgauge.events.words;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.KeyFrame;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Severity;
import floorgauge.events.finding.Tick;
import floorgauge.events.play.PlayerPath;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A finding being put together. Not safe for use by several threads. */
public final class FindingDraft {

    private final FindingKind kind;
    private final String label;
    private final double from;
    private final double to;
    private final List<RoleHolder> roles = new ArrayList<>();
    private final List<Figure> figures = new ArrayList<>();
    private final List<KeyFrame> frames = new ArrayList<>();
    private final List<Tick> ticks = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();
    private final List<NotSeen> notSeen = new ArrayList<>();
    private Optional<Severity> severity = Optional.empty();
    private double probability = 1;
    private String sentence = "";

    public FindingDraft(FindingKind kind, String label, double fromSeconds, double toSeconds) {
        this.kind = kind;
        this.label = label;
        this.from = fromSeconds;
        this.to = toSeconds;
    }

    public FindingDraft role(Role role, PlayerPath player) {
        roles.add(new RoleHolder(role, player.trackId()));
        return this;
    }

    public FindingDraft figure(Figure figure) {
        figures.add(figure);
        return this;
    }

    public FindingDraft frame(double seconds, String caption) {
        frames.add(new KeyFrame(seconds, caption));
        return this;
    }

    public FindingDraft tick(double seconds, double error, String words) {
        ticks.add(new Tick(seconds, error, words));
        return this;
    }

    public FindingDraft mark(Mark mark) {
        marks.add(mark);
        return this;
    }

    public FindingDraft notSeen(String what, String why) {
        notSeen.add(new NotSeen(what, why));
        return this;
    }

    public FindingDraft probability(double value) {
        probability = Math.max(0, Math.min(1, value));
        return this;
    }

    /** @param level is held to 0 to 1 */
    public FindingDraft severity(double level, Figure cost) {
        severity = Optional.of(new Severity(Math.max(0, Math.min(1, level)), cost));
        return this;
    }

    public FindingDraft sentence(String words) {
        sentence = words;
        return this;
    }

    public Finding build() {
        frames.sort(Comparator.comparingDouble(KeyFrame::timeSeconds));
        ticks.sort(Comparator.comparingDouble(Tick::timeSeconds));
        return new Finding(
                kind, label, from, to, roles, figures, probability, severity, sentence, frames, ticks, marks, notSeen);
    }
}
