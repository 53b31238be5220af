package floorgauge.app.store;

import floorgauge.court.rules.CourtEnd;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.Tick;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.FilmReference;
import floorgauge.sampleclips.labels.LabelWriter;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.LabelledPerson;
import floorgauge.sampleclips.labels.LabelledPossession;
import floorgauge.sampleclips.labels.UnclearSpan;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Turns the verdicts of a film into labels. What was judged right stands as corrected, what was judged wrong is left out,
 * can't tell and what was not judged count neither as hit nor as miss. Possessions in which nothing was judged are unclear.
 */
public final class LabelFile {

    private static final Set<String> DECISIVE = Set.of("screen", "release");

    private final Store store;

    public LabelFile(Store store) {
        this.store = store;
    }

    /** The file's text; it is kept in the store as it was handed out. */
    public String write(StoredFilm film, String annotator) {
        String text = LabelWriter.text(labels(film, annotator));
        store.jdbi()
                .useTransaction(h -> h.createUpdate("INSERT INTO labels (id, film_id, annotator, body, written_at)"
                                + " VALUES (:id, :film, :annotator, :body, :at)")
                        .bind("id", java.util.UUID.randomUUID().toString())
                        .bind("film", film.id())
                        .bind("annotator", annotator)
                        .bind("body", text)
                        .bind("at", Instant.now().toString())
                        .execute());
        return text;
    }

    /** The labels. */
    public FilmLabels labels(StoredFilm film, String annotator) {
        Films films = new Films(store);
        List<StoredPossession> possessions = films.possessions(film.id());
        List<Subject> judged = new Verdicts(store).ofFilm(film.id());
        List<LabelledEvent> events = events(films.findings(film.id()), judged);
        Set<CourtEnd> ends = possessions.stream().map(p -> p.possession().end()).collect(Collectors.toSet());
        return new FilmLabels(
                Optional.of(new FilmReference(film.name(), film.sha256())),
                Optional.empty(),
                annotator,
                FilmLabels.GUIDELINE_VERSION,
                film.rules(),
                ends.size() == 1 ? ends.stream().findFirst() : Optional.empty(),
                people(films.tracks(film.id()), possessions, events),
                possessions.stream().map(p -> possession(p.possession())).toList(),
                events,
                unclear(possessions, judged));
    }

    private static List<LabelledEvent> events(List<StoredFinding> findings, List<Subject> judged) {
        Map<String, Subject> byFinding = judged.stream()
                .filter(s -> s.findingId().isPresent())
                .collect(Collectors.toMap(s -> s.findingId().orElseThrow(), Function.identity(), (a, b) -> a));
        List<LabelledEvent> events = new ArrayList<>();
        for (StoredFinding found : findings) {
            Subject subject = byFinding.get(found.id());
            if (subject == null) {
                events.add(notJudged(found.finding()));
            } else {
                judged(subject, moment(found.finding())).ifPresent(events::add);
            }
        }
        judged.stream()
                .filter(s -> s.findingId().isEmpty())
                .forEach(s -> judged(s, OptionalDouble.empty()).ifPresent(events::add));
        events.sort(Comparator.comparingDouble(LabelledEvent::fromSeconds).thenComparing(LabelledEvent::kind));
        return LabelledEvent.numbered(events);
    }

    private static LabelledEvent notJudged(Finding finding) {
        return event(
                finding.kind(),
                finding.label(),
                finding.fromSeconds(),
                moment(finding),
                finding.toSeconds(),
                finding.roles(),
                OptionalInt.empty(),
                List.of(LabelledEvent.EXISTENCE),
                "not judged");
    }

    private static Optional<LabelledEvent> judged(Subject subject, OptionalDouble moment) {
        Verdict verdict = subject.verdict().orElseThrow();
        if (verdict.answer() == Verdict.Answer.WRONG) {
            return Optional.empty();
        }
        boolean unsure = verdict.answer() == Verdict.Answer.CANT_TELL;
        boolean inside = moment.isPresent()
                && moment.getAsDouble() >= verdict.fromSeconds()
                && moment.getAsDouble() <= verdict.toSeconds();
        return Optional.of(event(
                verdict.kind(),
                verdict.label(),
                verdict.fromSeconds(),
                inside ? moment : OptionalDouble.empty(),
                verdict.toSeconds(),
                verdict.roles(),
                verdict.grade(),
                unsure ? List.of(LabelledEvent.EXISTENCE) : List.of(),
                verdict.note()));
    }

    private static LabelledEvent event(
            FindingKind kind,
            String label,
            double from,
            OptionalDouble at,
            double to,
            List<RoleHolder> roles,
            OptionalInt grade,
            List<String> cantTell,
            String note) {
        return new LabelledEvent(
                "unnumbered",
                kind,
                label.isBlank() ? Optional.empty() : Optional.of(label),
                from,
                at,
                to,
                roles,
                List.of(),
                new TreeMap<>(),
                grade,
                cantTell,
                note.isBlank() ? Optional.empty() : Optional.of(note));
    }

    private static OptionalDouble moment(Finding finding) {
        return finding.ticks().stream()
                .filter(t -> DECISIVE.contains(t.words()))
                .mapToDouble(Tick::timeSeconds)
                .filter(t -> t >= finding.fromSeconds() && t <= finding.toSeconds())
                .findFirst();
    }

    private static List<LabelledPerson> people(
            List<StoredTrack> tracks, List<StoredPossession> possessions, List<LabelledEvent> events) {
        Map<Integer, StoredTrack> known =
                tracks.stream().collect(Collectors.toMap(StoredTrack::trackId, Function.identity()));
        Set<Integer> ids = new TreeSet<>(known.keySet());
        events.forEach(e -> e.roles().forEach(r -> ids.add(r.trackId())));
        return ids.stream()
                .map(id -> new LabelledPerson(
                        id,
                        side(id, possessions),
                        player(known, id).map(Player::number).orElse(OptionalInt.empty()),
                        player(known, id).map(Player::name)))
                .toList();
    }

    private static Optional<Player> player(Map<Integer, StoredTrack> known, int id) {
        return Optional.ofNullable(known.get(id)).flatMap(StoredTrack::player);
    }

    /** The side on which someone is in most possessions. */
    private static LabelledPerson.Side side(int id, List<StoredPossession> possessions) {
        long attacks = possessions.stream()
                .filter(p -> p.possession().attackers().contains(id))
                .count();
        long defends = possessions.stream()
                .filter(p -> p.possession().defenders().contains(id))
                .count();
        if (attacks == 0 && defends == 0) {
            return LabelledPerson.Side.OTHER;
        }
        return attacks >= defends ? LabelledPerson.Side.ATTACK : LabelledPerson.Side.DEFENCE;
    }

    private static LabelledPossession possession(Possession possession) {
        String outcome = LabelledPossession.OUTCOMES.stream()
                .filter(o -> possession.outcome().contains(o))
                .findFirst()
                .orElse("stoppage");
        return new LabelledPossession(
                possession.fromSeconds(),
                possession.toSeconds(),
                possession.attackers(),
                possession.defenders(),
                outcome);
    }

    private static List<UnclearSpan> unclear(List<StoredPossession> possessions, List<Subject> judged) {
        return possessions.stream()
                .map(StoredPossession::possession)
                .filter(p -> judged.stream()
                        .noneMatch(s -> s.fromSeconds() < p.toSeconds() && s.toSeconds() > p.fromSeconds()))
                .map(p -> new UnclearSpan(p.fromSeconds(), p.toSeconds(), "nothing judged in this possession"))
                .toList();
    }
}
