package floorgauge.eval.score;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.EventMatches;
import floorgauge.eval.events.EventTolerance;
import floorgauge.events.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The error rows of one film's events. */
public final class EventRows {

    private static final String NOTHING = "-";

    private final String film;
    private final ErrorLinks links;
    private final List<ErrorRow> rows = new ArrayList<>();

    private EventRows(String film, ErrorLinks links) {
        this.film = film;
        this.links = links;
    }

    /** Kind by kind: what was missed, what is false, and what is off in what was found. */
    public static List<ErrorRow> of(EventFilm film, EventTolerance tolerance, ErrorLinks links) {
        EventRows rows = new EventRows(film.film(), links);
        for (FindingKind kind : FindingKind.values()) {
            rows.add(film.only(kind).match(tolerance));
        }
        return rows.rows;
    }

    private void add(EventMatches matches) {
        for (EventMark missed : matches.missed()) {
            rows.add(row(missed, "missed", missed.id(), inWords(missed), NOTHING, Optional.empty()));
        }
        for (EventMark wrong : matches.falseAlarms()) {
            rows.add(row(wrong, "false", wrong.id(), NOTHING, inWords(wrong), Optional.of(wrong)));
        }
        matches.pairs().forEach(this::addPair);
    }

    private void addPair(EventMatches.Pair pair) {
        String ids = pair.label().id() + " / " + pair.result().id();
        Optional<EventMark> found = Optional.of(pair.result());
        if (pair.rolesSame() < pair.rolesCompared()) {
            rows.add(row(pair.label(), "wrong roles", ids, roles(pair.label()), roles(pair.result()), found));
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
                    found));
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
                    Optional.of(pair.result())));
        }
    }

    private ErrorRow row(
            EventMark at, String problem, String ids, String expected, String came, Optional<EventMark> found) {
        double time = at.momentSeconds();
        return new ErrorRow(film, time, at.kind().words(), problem, ids, expected, came, links.to(time, found));
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
