package floorgauge.eval.events;

import floorgauge.events.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The floor under every event score: a guesser who never looks at the film. It is told how many events of each kind there are,
 * spreads as many evenly over the film, and answers every figure with the mean of the labels. Its roles are not compared,
 * which favours it. What does not beat this has measured nothing.
 */
public final class EvenGuesses {

    private static final double SECONDS_PER_HOUR = 3600;

    private EvenGuesses() {}

    /** The same films with guesses for findings. */
    public static List<EventFilm> of(List<EventFilm> films) {
        SortedMap<FindingKind, SortedMap<String, Double>> means = means(films);
        return films.stream()
                .map(f -> f.with(guesses(f, means), Identities.unknown()))
                .toList();
    }

    private static List<EventMark> guesses(EventFilm film, SortedMap<FindingKind, SortedMap<String, Double>> means) {
        List<EventMark> guesses = new ArrayList<>();
        for (FindingKind kind : FindingKind.values()) {
            long count = film.labels().stream().filter(l -> l.kind() == kind).count();
            for (int i = 0; i < count; i++) {
                double time = film.hours() * SECONDS_PER_HOUR * (i + 0.5) / count;
                guesses.add(new EventMark(
                        "guess " + (guesses.size() + 1),
                        kind,
                        Optional.empty(),
                        time,
                        time,
                        time,
                        new TreeMap<>(),
                        means.get(kind),
                        0.5,
                        OptionalInt.empty(),
                        Set.of()));
            }
        }
        return guesses;
    }

    private static SortedMap<FindingKind, SortedMap<String, Double>> means(List<EventFilm> films) {
        SortedMap<FindingKind, SortedMap<String, List<Double>>> values = new TreeMap<>();
        for (EventFilm film : films) {
            for (EventMark label : film.labels()) {
                SortedMap<String, List<Double>> ofKind = values.computeIfAbsent(label.kind(), k -> new TreeMap<>());
                label.figures()
                        .forEach((name, value) -> ofKind.computeIfAbsent(name, n -> new ArrayList<>())
                                .add(value));
            }
        }
        SortedMap<FindingKind, SortedMap<String, Double>> means = new TreeMap<>();
        values.forEach((kind, ofKind) -> {
            SortedMap<String, Double> mean = new TreeMap<>();
            ofKind.forEach((name, list) -> mean.put(
                    name,
                    list.stream().mapToDouble(Double::doubleValue).average().orElseThrow()));
            means.put(kind, mean);
        });
        return means;
    }
}
