package floorgauge.app.review;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.Subject;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Role;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Phrases that several pages share. */
final class Words {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

    private Words() {}

    static String day(StoredFilm film) {
        return DAY.format(film.practiceDay());
    }

    /** The costliest and surest first; events after flags, in order of time. */
    static List<StoredFinding> byCost(List<StoredFinding> findings) {
        return findings.stream()
                .filter(f -> f.finding().kind().isFlag())
                .sorted(Comparator.comparingDouble((StoredFinding f) -> -weight(f.finding()))
                        .thenComparing(StoredFinding::number))
                .toList();
    }

    /** What a missed standard cost times how sure it is. */
    static double weight(Finding finding) {
        return finding.severity().map(s -> s.level()).orElse(0.0) * finding.probability();
    }

    /** Who did what, each role once. */
    static String roles(Finding finding, Names names) {
        Map<Role, List<String>> byRole = new LinkedHashMap<>();
        finding.roles()
                .forEach(h ->
                        byRole.computeIfAbsent(h.role(), r -> new ArrayList<>()).add(names.of(h.trackId())));
        return byRole.entrySet().stream()
                .map(e -> e.getKey().words() + (e.getValue().size() > 1 ? "s " : " ") + String.join(", ", e.getValue()))
                .collect(Collectors.joining("; "));
    }

    static String cost(Finding finding) {
        return finding.severity()
                .map(s -> "cost " + FigureText.of(s.cost()) + " (" + s.cost().name() + ")")
                .orElse("");
    }

    /** The state of a verdict in a word or two. */
    static String verdict(Optional<Subject> judged) {
        return judged.flatMap(Subject::verdict)
                .map(v -> v.answer().words() + (isCorrected(judged.orElseThrow()) ? ", corrected" : ""))
                .orElse("not judged");
    }

    static boolean isCorrected(Subject subject) {
        return subject.verdict()
                .map(v -> v.kind() != subject.kind()
                        || !v.label().equals(subject.label())
                        || Math.abs(v.fromSeconds() - subject.fromSeconds()) > 0.005
                        || Math.abs(v.toSeconds() - subject.toSeconds()) > 0.005
                        || !v.roles().equals(subject.roles())
                        || v.grade().isPresent()
                        || !v.note().isEmpty())
                .orElse(false);
    }
}
