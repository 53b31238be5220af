package floorgauge.app.store;

import floorgauge.app.result.FindingText;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.SpacingSample;
import floorgauge.events.finding.Unit;
import floorgauge.events.trend.TrendObservation;
import floorgauge.events.trend.TrendSubject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The season's figures by player, pair and line-up, from films whose tracks were assigned. What was judged wrong does not
 * count.
 */
public final class SeasonFigures {

    private static final Map<FindingKind, List<String>> FIGURES = Map.of(
            FindingKind.SCREEN, List.of("quality", "gap", "separation gained", "time lost"),
            FindingKind.PASS, List.of("delay", "flight time"));

    /** Flags that are counted by possession, with the role that answers for them. */
    private static final Map<FindingKind, Role> COUNTED = Map.of(
            FindingKind.WEAK_SCREEN, Role.SCREENER,
            FindingKind.LATE_PASS, Role.PASSER,
            FindingKind.EARLY_CUT, Role.CUTTER);

    private static final String NOT_WRONG = " NOT EXISTS (SELECT 1 FROM subjects s JOIN verdicts v"
            + " ON v.subject_id = s.id WHERE s.finding_id = g.id AND v.taken_back = 0 AND v.answer = 'WRONG'"
            + " AND v.turn = (SELECT MAX(w.turn) FROM verdicts w WHERE w.subject_id = s.id AND w.taken_back = 0))";

    private final Store store;
    private final Map<String, String> players = new HashMap<>();
    private final List<Marked> marks = new ArrayList<>();

    private SeasonFigures(Store store) {
        this.store = store;
    }

    /**
     * A value, and where it comes from.
     *
     * @param observation the value
     * @param filmId its film
     * @param findingId its finding; blank for a value of a whole possession
     * @param possession number of the possession on the film
     */
    public record Marked(TrendObservation observation, String filmId, String findingId, int possession) {}

    /** All of them. */
    public static List<Marked> read(Store store) {
        SeasonFigures figures = new SeasonFigures(store);
        figures.players();
        figures.findings();
        figures.possessions();
        return List.copyOf(figures.marks);
    }

    /** Changes whenever figures or names may have. */
    public static String stamp(Store store) {
        return store.jdbi().withHandle(h -> {
            String counts = h.createQuery("SELECT (SELECT COUNT(*) FROM findings), (SELECT COUNT(*) FROM verdicts),"
                            + " (SELECT COUNT(*) FROM verdicts WHERE taken_back = 1),"
                            + " (SELECT COALESCE(MAX(imported_at), '') FROM runs)")
                    .map((rows, context) ->
                            rows.getLong(1) + " " + rows.getLong(2) + " " + rows.getLong(3) + " " + rows.getString(4))
                    .one();
            List<String> said = h.createQuery("SELECT film_id, track_id, player_id, found FROM assignments"
                            + " ORDER BY film_id, track_id")
                    .map((rows, context) ->
                            rows.getString(1) + " " + rows.getInt(2) + " " + rows.getString(3) + " " + rows.getInt(4))
                    .list();
            return counts + " " + said.hashCode() + " "
                    + new Roster(store).players().hashCode();
        });
    }

    private void players() {
        store.jdbi()
                .useHandle(h -> h.createQuery("SELECT film_id, track_id, player_id FROM assignments WHERE found = 1")
                        .map((rows, context) -> Map.entry(rows.getString(1) + " " + rows.getInt(2), rows.getString(3)))
                        .forEach(e -> players.put(e.getKey(), e.getValue())));
    }

    private String player(String film, int track) {
        return players.get(film + " " + track);
    }

    /** A row of findings. */
    private record Row(String id, String film, LocalDate day, int possession, Finding finding) {}

    private void findings() {
        Set<FindingKind> kinds = new TreeSet<>(FIGURES.keySet());
        String names = kinds.stream().map(k -> "'" + k.name() + "'").collect(Collectors.joining(", "));
        List<Row> rows = store.jdbi()
                .withHandle(h -> h.createQuery(
                                "SELECT g.id, g.film_id, f.practice_day, p.number, g.body FROM findings g"
                                        + " JOIN films f ON f.id = g.film_id JOIN possessions p ON p.id = g.possession_id"
                                        + " WHERE g.kind IN (" + names + ") AND" + NOT_WRONG
                                        + " ORDER BY g.film_id, g.number")
                        .map((r, context) -> new Row(
                                r.getString(1),
                                r.getString(2),
                                LocalDate.parse(r.getString(3)),
                                r.getInt(4),
                                FindingText.read(r.getString(5))))
                        .list());
        for (Row row : rows) {
            for (Figure figure : row.finding().figures()) {
                boolean part =
                        figure.name().startsWith("quality: ") && row.finding().kind() == FindingKind.SCREEN;
                if (part || FIGURES.get(row.finding().kind()).contains(figure.name())) {
                    mark(row, figure);
                }
            }
        }
    }

    private void mark(Row row, Figure figure) {
        if (row.finding().kind() == FindingKind.PASS) {
            one(row, figure, Role.PASSER);
            return;
        }
        one(row, figure, Role.SCREENER);
        if (figure.name().equals("separation gained") || figure.name().equals("quality")) {
            one(row, figure, Role.USER);
            pair(row, figure);
        }
    }

    private void one(Row row, Figure figure, Role role) {
        OptionalInt track = row.finding().holder(role);
        if (track.isPresent()) {
            String player = player(row.film(), track.getAsInt());
            if (player != null) {
                add(row, figure, role, List.of(player));
            }
        }
    }

    private void pair(Row row, Figure figure) {
        OptionalInt screener = row.finding().holder(Role.SCREENER);
        OptionalInt user = row.finding().holder(Role.USER);
        if (screener.isPresent() && user.isPresent()) {
            String first = player(row.film(), screener.getAsInt());
            String second = player(row.film(), user.getAsInt());
            if (first != null && second != null && !first.equals(second)) {
                add(row, figure, Role.SCREENER, List.of(first, second));
            }
        }
    }

    private void add(Row row, Figure figure, Role role, List<String> who) {
        TrendSubject subject = new TrendSubject(who, role, row.finding().kind(), figure.name(), figure.unit());
        marks.add(new Marked(
                new TrendObservation(
                        subject,
                        row.film() + "-" + row.possession(),
                        row.day(),
                        figure.value(),
                        figure.standardError().orElse(0)),
                row.film(),
                row.id(),
                row.possession()));
    }

    /** Flags counted over the possessions in which a player attacks, and spacing by line-up. */
    private void possessions() {
        Map<String, Map<String, Integer>> flags = flags();
        store.jdbi()
                .useHandle(h -> h.createQuery("SELECT p.id, p.film_id, p.number, p.attackers, p.spacing, f.practice_day"
                                + " FROM possessions p JOIN films f ON f.id = p.film_id ORDER BY p.film_id, p.number")
                        .map((r, context) -> new Whole(
                                r.getString(1),
                                r.getString(2),
                                r.getInt(3),
                                StoreJson.wholes(r.getString(4)),
                                r.getString(5),
                                LocalDate.parse(r.getString(6))))
                        .forEach(p -> possession(p, flags)));
    }

    /** A row of possessions. */
    private record Whole(String id, String film, int number, List<Integer> attackers, String spacing, LocalDate day) {}

    private void possession(Whole possession, Map<String, Map<String, Integer>> flags) {
        List<String> five = possession.attackers().stream()
                .map(t -> player(possession.film(), t))
                .filter(Objects::nonNull)
                .sorted()
                .toList();
        Map<String, Integer> here = flags.getOrDefault(possession.id(), Map.of());
        for (String player : five) {
            COUNTED.forEach((kind, role) -> whole(
                    possession,
                    new TrendSubject(List.of(player), role, kind, kind.words() + " a possession", Unit.COUNT),
                    here.getOrDefault(kind.name() + " " + player, 0)));
        }
        if (five.size() == possession.attackers().size() && five.size() > 1) {
            OptionalDouble apart = apart(possession.spacing());
            if (apart.isPresent()) {
                whole(
                        possession,
                        new TrendSubject(
                                five,
                                Role.ATTACKER,
                                FindingKind.CROWDED_FLOOR,
                                "distance to the nearest team-mate",
                                Unit.METRES),
                        apart.getAsDouble());
            }
        }
    }

    private void whole(Whole possession, TrendSubject subject, double value) {
        marks.add(new Marked(
                new TrendObservation(
                        subject, possession.film() + "-" + possession.number(), possession.day(), value, 0),
                possession.film(),
                "",
                possession.number()));
    }

    private static OptionalDouble apart(String spacing) {
        return StoreJson.spacing(spacing).stream()
                .filter(s -> !s.duringAction())
                .map(SpacingSample::meanNearestMetres)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .average();
    }

    private Map<String, Map<String, Integer>> flags() {
        String kinds = COUNTED.keySet().stream()
                .sorted()
                .map(k -> "'" + k.name() + "'")
                .collect(Collectors.joining(", "));
        Map<String, Map<String, Integer>> flags = new HashMap<>();
        store.jdbi()
                .useHandle(h -> h.createQuery("SELECT g.possession_id, g.kind, r.film_id, r.role, r.track_id"
                                + " FROM findings g JOIN finding_roles r ON r.finding_id = g.id WHERE g.kind IN ("
                                + kinds + ") AND" + NOT_WRONG)
                        .map((r, context) -> Arrays.asList(
                                r.getString(1), r.getString(2), r.getString(4), player(r.getString(3), r.getInt(5))))
                        .forEach(row -> {
                            boolean answers = COUNTED.get(FindingKind.valueOf(row.get(1)))
                                    .name()
                                    .equals(row.get(2));
                            if (answers && row.get(3) != null) {
                                flags.computeIfAbsent(row.get(0), p -> new HashMap<>())
                                        .merge(row.get(1) + " " + row.get(3), 1, Integer::sum);
                            }
                        }));
        return flags;
    }
}
