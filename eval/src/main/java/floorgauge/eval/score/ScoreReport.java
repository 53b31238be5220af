package floorgauge.eval.score;

import floorgauge.eval.events.EvenGuesses;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.events.FlagScores;
import floorgauge.eval.events.GradeAgreement;
import floorgauge.eval.events.KindsOf;
import floorgauge.eval.events.ToleranceCurve;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.eval.statistics.Estimate;
import floorgauge.events.finding.FindingKind;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Everything that scoring says of a results folder.
 *
 * @param films each film's measures and errors, in the order of label files
 * @param table every measure over all films, in order of group and name
 * @param curves of each kind that was labelled or found
 * @param grades screen quality against a coach's grades
 * @param gradeCeiling a second annotator's grades against the first's
 * @param breakdowns the main measures by condition, where films differ in it
 */
public record ScoreReport(
        List<FilmScore> films,
        List<TableRow> table,
        List<KindCurves> curves,
        GradeAgreement grades,
        GradeAgreement gradeCeiling,
        List<Breakdown> breakdowns) {

    private static final List<Measure> MAIN = List.of(
            Measure.share(EventSums.ALL_EVENTS, "F1"),
            Measure.share(EventSums.ALL_FLAGS, "F1"),
            Measure.error(EventSums.ALL_FLAGS, "false per hour", "1/h"),
            Measure.share(TrackSums.GROUP, "HOTA"),
            Measure.share(TrackSums.GROUP, "IDF1"));

    public ScoreReport {
        films = List.copyOf(films);
        table = List.copyOf(table);
        curves = List.copyOf(curves);
        breakdowns = List.copyOf(breakdowns);
    }

    /** Scores all films. */
    public static ScoreReport of(FilmPairing pairing, EventTolerance tolerance, ClipBootstrap bootstrap) {
        List<FilmScore> films =
                pairing.pairs().stream().map(p -> FilmScore.of(p, tolerance)).toList();
        List<EventFilm> second = secondAnnotators(pairing);
        List<EventFilm> events = films.stream().map(FilmScore::events).toList();
        return new ScoreReport(
                films,
                table(
                        films.stream().map(FilmScore::sums).toList(),
                        sums(second, tolerance),
                        sums(EvenGuesses.of(events), tolerance),
                        bootstrap),
                curves(events, tolerance),
                grades(events, tolerance, bootstrap),
                grades(second, tolerance, bootstrap),
                breakdowns(films, bootstrap));
    }

    /** All error rows, in order of film. */
    public List<ErrorRow> errors() {
        return films.stream().flatMap(f -> f.errors().stream()).toList();
    }

    private static List<EventFilm> secondAnnotators(FilmPairing pairing) {
        List<EventFilm> films = new ArrayList<>();
        for (int i = 0; i < pairing.pairs().size(); i++) {
            FilmPair pair = pairing.pairs().get(i);
            pairing.seconds().get(i).ifPresent(s -> films.add(pair.against(s)));
        }
        return films;
    }

    private static List<FilmSums> sums(List<EventFilm> films, EventTolerance tolerance) {
        return films.stream()
                .map(f -> new FilmSums(f.film(), EventSums.of(f, tolerance)))
                .toList();
    }

    private static List<TableRow> table(
            List<FilmSums> films, List<FilmSums> second, List<FilmSums> guesses, ClipBootstrap bootstrap) {
        SortedSet<Measure> measures = new TreeSet<>();
        films.forEach(f -> measures.addAll(f.sums().keySet()));
        List<TableRow> rows = new ArrayList<>();
        for (Measure measure : measures) {
            rows.add(new TableRow(
                    measure,
                    estimate(films, measure, bootstrap),
                    known(second, measure, bootstrap),
                    known(guesses, measure, bootstrap)));
        }
        return rows;
    }

    static Estimate estimate(List<FilmSums> films, Measure measure, ClipBootstrap bootstrap) {
        return bootstrap.estimate(films, drawn -> FilmSums.value(drawn, measure));
    }

    private static Optional<Estimate> known(List<FilmSums> films, Measure measure, ClipBootstrap bootstrap) {
        boolean has = films.stream().anyMatch(f -> f.sums().containsKey(measure));
        return has ? Optional.of(estimate(films, measure, bootstrap)) : Optional.empty();
    }

    private static List<KindCurves> curves(List<EventFilm> films, EventTolerance tolerance) {
        return KindsOf.films(films).stream()
                .map(kind -> curves(kind, films.stream().map(f -> f.only(kind)).toList(), tolerance))
                .toList();
    }

    private static KindCurves curves(FindingKind kind, List<EventFilm> films, EventTolerance tolerance) {
        return new KindCurves(kind, ToleranceCurve.of(films, tolerance), FlagScores.of(films, tolerance));
    }

    private static GradeAgreement grades(List<EventFilm> films, EventTolerance tolerance, ClipBootstrap bootstrap) {
        return GradeAgreement.of(films.stream().map(f -> f.match(tolerance)).toList(), bootstrap);
    }

    private static List<Breakdown> breakdowns(List<FilmScore> films, ClipBootstrap bootstrap) {
        SortedMap<String, SortedMap<String, List<FilmSums>>> groups = new TreeMap<>();
        for (FilmScore film : films) {
            film.conditions()
                    .forEach((condition, value) -> groups.computeIfAbsent(condition, c -> new TreeMap<>())
                            .computeIfAbsent(value, v -> new ArrayList<>())
                            .add(film.sums()));
        }
        groups.values().removeIf(values -> values.size() < 2);
        return groups.entrySet().stream()
                .flatMap(condition -> condition.getValue().entrySet().stream()
                        .flatMap(value -> breakdowns(condition.getKey(), value.getKey(), value.getValue(), bootstrap)))
                .toList();
    }

    private static Stream<Breakdown> breakdowns(
            String condition, String value, Collection<FilmSums> films, ClipBootstrap bootstrap) {
        List<FilmSums> list = List.copyOf(films);
        return MAIN.stream()
                .filter(m -> list.stream().anyMatch(f -> f.sums().containsKey(m)))
                .map(m -> new Breakdown(condition, value, m, estimate(list, m, bootstrap)));
    }
}
