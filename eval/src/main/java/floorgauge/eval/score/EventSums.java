package floorgauge.eval.score;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMatches;
import floorgauge.eval.events.EventTolerance;
import floorgauge.events.finding.FindingKind;
import java.util.SortedMap;
import java.util.TreeMap;

/** The event measures of one film as sums: by kind, and over all events and all flags. */
public final class EventSums {

    static final String ALL_EVENTS = "events, all";
    static final String ALL_FLAGS = "flags, all";

    private final EventTolerance tolerance;
    private final SortedMap<Measure, Sum> sums = new TreeMap<>();

    private EventSums(EventTolerance tolerance) {
        this.tolerance = tolerance;
    }

    /** Every measure that the film has something to say of. */
    public static SortedMap<Measure, Sum> of(EventFilm film, EventTolerance tolerance) {
        EventSums all = new EventSums(tolerance);
        for (FindingKind kind : FindingKind.values()) {
            all.addKind(film, kind);
        }
        return all.sums;
    }

    /** The group of a kind in the table. */
    static String group(FindingKind kind) {
        return (kind.isFlag() ? "flag, " : "event, ") + kind.words();
    }

    private void addKind(EventFilm film, FindingKind kind) {
        EventMatches matches = film.only(kind).match(tolerance);
        boolean nothing = matches.pairs().isEmpty()
                && matches.missed().isEmpty()
                && matches.falseAlarms().isEmpty();
        String all = kind.isFlag() ? ALL_FLAGS : ALL_EVENTS;
        addCounts(all, matches, film.hours());
        if (!nothing) {
            addCounts(group(kind), matches, film.hours());
            matches.pairs().forEach(p -> addPair(group(kind), p));
        }
    }

    private void addCounts(String group, EventMatches matches, double hours) {
        double found = matches.pairs().size();
        double missed = matches.missed().size();
        double wrong = matches.falseAlarms().size();
        add(Measure.share(group, "precision"), found, found + wrong);
        add(Measure.share(group, "recall"), found, found + missed);
        add(Measure.share(group, "F1"), 2 * found, 2 * found + wrong + missed);
        addHours(Measure.error(group, "false per hour", "1/h"), wrong, hours);
    }

    private void addPair(String group, EventMatches.Pair pair) {
        add(Measure.error(group, "onset error, mean size", "s"), Math.abs(pair.momentErrorSeconds()), 1);
        if (pair.rolesCompared() > 0) {
            add(Measure.share(group, "roles right"), pair.rolesSame(), pair.rolesCompared());
        }
        boolean bothTold =
                pair.label().label().isPresent() && pair.result().label().isPresent();
        if (bothTold && !pair.label().cantTell().contains("label")) {
            add(
                    Measure.share(group, "name right"),
                    pair.label().label().equals(pair.result().label()) ? 1 : 0,
                    1);
        }
        pair.label().figures().forEach((name, value) -> {
            Double came = pair.result().figures().get(name);
            if (came != null && !pair.label().cantTell().contains(name)) {
                add(Measure.error(group, name + ", mean size of error", ""), Math.abs(came - value), 1);
                add(new Measure(group, name + ", bias", "", Measure.Better.NEITHER), came - value, 1);
            }
        });
    }

    private void add(Measure measure, double part, double whole) {
        sums.merge(measure, new Sum(part, whole), Sum::plus);
    }

    /** Hours are the film's once, however many kinds of event are added to a group. */
    private void addHours(Measure measure, double part, double hours) {
        sums.merge(measure, new Sum(part, hours), (a, b) -> new Sum(a.part() + b.part(), hours));
    }
}
