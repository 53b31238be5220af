package floorgauge.events.finding;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One thing that was measured, or one standard that was missed.
 *
 * @param kind what it is about
 * @param label the kind within its kind, in the trade's words, such as "down screen" or "backdoor cut"
 * @param fromSeconds start, presentation time
 * @param toSeconds end, at or after the start
 * @param roles who did what
 * @param figures what was measured
 * @param probability for a flag, that the true value lies beyond its threshold; for an event, that it took place; 0 to 1
 * @param severity what it cost; present for flags only
 * @param sentence one plain sentence with the figures, their errors and units; players stand in it as {@code #7} for track 7
 * @param frames the moments that show it best, three where the film has them, in order of time
 * @param ticks named instants for the time rule, in order of time
 * @param marks what to draw
 * @param notSeen what could not be measured, and why
 */
public record Finding(
        FindingKind kind,
        String label,
        double fromSeconds,
        double toSeconds,
        List<RoleHolder> roles,
        List<Figure> figures,
        double probability,
        Optional<Severity> severity,
        String sentence,
        List<KeyFrame> frames,
        List<Tick> ticks,
        List<Mark> marks,
        List<NotSeen> notSeen) {

    public Finding {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(severity, "severity");
        Objects.requireNonNull(sentence, "sentence");
        roles = List.copyOf(roles);
        figures = List.copyOf(figures);
        frames = List.copyOf(frames);
        ticks = List.copyOf(ticks);
        marks = List.copyOf(marks);
        notSeen = List.copyOf(notSeen);
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a finding ends after its start: " + fromSeconds + ", " + toSeconds);
        }
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + probability);
        }
        if (severity.isPresent() != kind.isFlag()) {
            throw new IllegalArgumentException("flags, and flags alone, have a severity: " + kind);
        }
    }

    /** The first holder of a role. */
    public OptionalInt holder(Role role) {
        return roles.stream()
                .filter(h -> h.role() == role)
                .mapToInt(RoleHolder::trackId)
                .findFirst();
    }

    /** The figure of this name. */
    public Optional<Figure> figure(String name) {
        return figures.stream().filter(f -> f.name().equals(name)).findFirst();
    }

    /** The same in another sentence. */
    public Finding saying(String otherSentence) {
        return with(probability, otherSentence, notSeen);
    }

    /**
     * The same, less sure.
     *
     * @param otherProbability 0 to 1
     * @param unseen all that was not seen, and why
     */
    public Finding doubted(double otherProbability, List<NotSeen> unseen) {
        return with(otherProbability, sentence, unseen);
    }

    private Finding with(double otherProbability, String otherSentence, List<NotSeen> unseen) {
        return new Finding(
                kind,
                label,
                fromSeconds,
                toSeconds,
                roles,
                figures,
                otherProbability,
                severity,
                otherSentence,
                frames,
                ticks,
                marks,
                unseen);
    }
}
