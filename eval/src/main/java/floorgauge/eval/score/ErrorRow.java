package floorgauge.eval.score;

import java.util.Comparator;
import java.util.Objects;

/**
 * One error.
 *
 * @param film its name
 * @param timeSeconds presentation time
 * @param about the kind of event, or track
 * @param problem missed, false, wrong roles, wrong kind, figure off, lost, nobody there, switched
 * @param ids of the label and of the result, in words
 * @param expected what the label says; a dash where it says nothing
 * @param came what the result says; a dash where it says nothing
 * @param link opens the place, relative to the results folder
 */
public record ErrorRow(
        String film,
        double timeSeconds,
        String about,
        String problem,
        String ids,
        String expected,
        String came,
        String link) {

    /** By film, then time, then the rest: the same errors always stand in the same order. */
    public static final Comparator<ErrorRow> ORDER = Comparator.comparing(ErrorRow::film)
            .thenComparingDouble(ErrorRow::timeSeconds)
            .thenComparing(ErrorRow::about)
            .thenComparing(ErrorRow::problem)
            .thenComparing(ErrorRow::ids)
            .thenComparing(ErrorRow::expected);

    public ErrorRow {
        Objects.requireNonNull(film, "film");
        Objects.requireNonNull(about, "about");
        Objects.requireNonNull(problem, "problem");
        Objects.requireNonNull(ids, "ids");
        Objects.requireNonNull(expected, "expected");
        Objects.requireNonNull(came, "came");
        Objects.requireNonNull(link, "link");
    }
}
