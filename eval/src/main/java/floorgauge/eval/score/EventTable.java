package floorgauge.eval.score;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.events.KindsOf;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** Precision, recall and F1 of every kind of event as lines of a Markdown table. */
public final class EventTable {

    private EventTable() {}

    /**
     * One line for each kind that was labelled or found: precision, recall, F1, its interval, and the guesser's F1.
     *
     * @param guesses the same films with a guesser's findings
     */
    public static List<String> of(
            List<EventFilm> films, List<EventFilm> guesses, EventTolerance tolerance, ClipBootstrap bootstrap) {
        List<FilmSums> sums = sums(films, tolerance);
        List<FilmSums> guessed = sums(guesses, tolerance);
        List<String> lines = new ArrayList<>();
        for (FindingKind kind : KindsOf.films(films)) {
            String group = EventSums.group(kind);
            Measure f1 = Measure.share(group, "F1");
            lines.add("| " + group + " | "
                    + String.join(
                            " | ",
                            value(sums, Measure.share(group, "precision")),
                            value(sums, Measure.share(group, "recall")),
                            value(sums, f1),
                            ScoreText.interval(ScoreReport.estimate(sums, f1, bootstrap)),
                            value(guessed, f1))
                    + " |");
        }
        return lines;
    }

    private static List<FilmSums> sums(List<EventFilm> films, EventTolerance tolerance) {
        return films.stream()
                .map(f -> new FilmSums(f.film(), EventSums.of(f, tolerance)))
                .toList();
    }

    private static String value(List<FilmSums> films, Measure measure) {
        return Decimals.of(FilmSums.value(films, measure), 2);
    }
}
