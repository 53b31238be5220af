package floorgauge.eval.events;

import floorgauge.eval.statistics.ErrorSummary;
import floorgauge.eval.statistics.Ratios;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Scores over matches, of one kind or of all, of one film or of many.
 *
 * @param found labels with a finding
 * @param missed labels without one
 * @param falseAlarms findings without a label
 * @param onset error of the moment over the pairs, seconds, result less label
 * @param figures error of each figure that both sides give, result less label, by name in the figure's unit
 * @param labelsCompared pairs of which both sides tell the kind within the kind
 * @param labelsSame of them those that agree
 * @param rolesCompared roles that both sides of a pair name
 * @param rolesSame of them those held by the same people
 */
public record EventScores(
        long found,
        long missed,
        long falseAlarms,
        ErrorSummary onset,
        SortedMap<String, ErrorSummary> figures,
        long labelsCompared,
        long labelsSame,
        long rolesCompared,
        long rolesSame) {

    public EventScores {
        figures = Collections.unmodifiableSortedMap(new TreeMap<>(figures));
    }

    /** Sums up the matches of any number of films. */
    public static EventScores of(List<EventMatches> films) {
        List<EventMatches.Pair> pairs =
                films.stream().flatMap(f -> f.pairs().stream()).toList();
        List<EventMatches.Pair> labelled = pairs.stream()
                .filter(p -> p.label().label().isPresent() && p.result().label().isPresent())
                .filter(p -> !p.label().cantTell().contains("label"))
                .toList();
        return new EventScores(
                pairs.size(),
                films.stream().mapToLong(f -> f.missed().size()).sum(),
                films.stream().mapToLong(f -> f.falseAlarms().size()).sum(),
                ErrorSummary.of(pairs.stream()
                        .mapToDouble(EventMatches.Pair::momentErrorSeconds)
                        .toArray()),
                figures(pairs),
                labelled.size(),
                labelled.stream()
                        .filter(p -> p.label().label().equals(p.result().label()))
                        .count(),
                pairs.stream().mapToLong(EventMatches.Pair::rolesCompared).sum(),
                pairs.stream().mapToLong(EventMatches.Pair::rolesSame).sum());
    }

    /** Share of findings that are labelled, 0 to 1; NaN without a finding. */
    public double precision() {
        return Ratios.of(found, found + falseAlarms);
    }

    /** Share of labels that were found, 0 to 1; NaN without a label. */
    public double recall() {
        return Ratios.of(found, found + missed);
    }

    /** Harmonic mean of precision and recall; NaN without either. */
    public double f1() {
        return Ratios.f1(found, falseAlarms, missed);
    }

    /** Share of pairs that agree on the kind within the kind; NaN where none could be compared. */
    public double labelAccuracy() {
        return Ratios.of(labelsSame, labelsCompared);
    }

    /** Share of roles held by the same people; NaN where none could be compared. */
    public double roleAccuracy() {
        return Ratios.of(rolesSame, rolesCompared);
    }

    private static SortedMap<String, ErrorSummary> figures(List<EventMatches.Pair> pairs) {
        SortedMap<String, List<Double>> errors = new TreeMap<>();
        for (EventMatches.Pair pair : pairs) {
            pair.label().figures().forEach((name, value) -> {
                Double found = pair.result().figures().get(name);
                if (found != null && !pair.label().cantTell().contains(name)) {
                    errors.computeIfAbsent(name, n -> new ArrayList<>()).add(found - value);
                }
            });
        }
        SortedMap<String, ErrorSummary> summaries = new TreeMap<>();
        errors.forEach((name, list) -> summaries.put(
                name,
                ErrorSummary.of(list.stream().mapToDouble(Double::doubleValue).toArray())));
        return summaries;
    }
}
