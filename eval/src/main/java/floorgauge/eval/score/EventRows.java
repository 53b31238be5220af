package floorgauge.eval.score;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.EventMatches;
import floorgauge.eval.events.EventTolerance;
import floorgauge.events.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The error rows of one film's events. */
final class EventRows {

    private static final String NOTHING = "-";

    private final FilmResults results;
    private final List<ErrorRow> rows = new ArrayList<>();

    private EventRows(FilmResults results) {
        this.results = results;
    }

    static List<ErrorRow> of(EventFilm film, FilmResults results, EventTolerance tolerance) {
        EventRows rows = new EventRows(results);
        for (FindingKind kind : FindingKind.values()) {
            rows.add(film.only(kind).match(tolerance));
        }
        return rows.rows;
    }

    private void add(EventMatches matches) {
        for (EventMark missed : matches.missed()) {
            rows.add(row(missed, "missed", missed.id(), inWords(missed), NOTHING, results.link()));
        }
        for (EventMark wrong : matches.falseAlarms()) {
            rows.add(row(wrong, "false", wrong.id(), NOTHING, inWords(wrong), results.link(wrong)));
        }
        matches.pairs().forEach(this::addPair);
    }

    private void addPair(EventMatches.Pair pair) {
        String ids = pair.label().id() + " / " + pair.result().id();
        String link = results.link(pair.result());
        if (pair.rolesSame() < pair.rolesCompared()) {
            rows.add(row(pair.label(), "wrong roles", ids, roles(pair.label()), roles(pair.result()), link));
        }
        boolean named =
                pair.label().label().isPresent() && pair.result().label().isPresent();
        if (named && !pair.label().label().equals(pair.result().label())) {
            rows.add(row(
                    pair.label(),
                    "wrong name",
                    ids,
                    pair.label().label().get(),
                    pair.result().label().get(),
                    link));
        }
        addNumber(
                pair, ids, "moment", pair.label().momentSeconds(), pair.result().momentSeconds());
        pair.label().figures().forEach((name, value) -> {
            Double came = pair.result().figures().get(name);
            if (came != null && !pair.label().cantTell().contains(name)) {
                addNumber(pair, ids, name, value, came);
            }
        });
    }

    /** A figure that agrees to two decimals is no error. */
    private void addNumber(EventMatches.Pair pair, String ids, String name, double expected, double came) {
        String wanted = Decimals.of(expected, 2);
        String got = Decimals.of(came, 2);
        if (!wanted.equals(got)) {
            rows.add(row(
                    pair.label(),
                    "figure off",
                    ids,
                    name + " " + wanted,
                    name + " " + got,
                    results.link(pair.result())));
        }
    }

    private ErrorRow row(EventMark at, String problem, String ids, String expected, String came, String link) {
        return new ErrorRow(results.name(), at.momentSeconds(), at.kind().words(), problem, ids, expected, came, link);
    }

    private static String inWords(EventMark mark) {
        String name = mark.label().orElse(mark.kind().words());
        String people = roles(mark);
        return people.isEmpty() ? name : name + " (" + people + ")";
    }

    private static String roles(EventMark mark) {
        return mark.roles().entrySet().stream()
                .map(e -> e.getKey().words() + " "
                        + e.getValue().stream().map(String::valueOf).collect(Collectors.joining(" and ")))
                .collect(Collectors.joining(", "));
    }
}
