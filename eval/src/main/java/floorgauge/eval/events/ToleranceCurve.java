package floorgauge.eval.events;

import java.util.ArrayList;
import java.util.List;

/**
 * Precision and recall over the tolerance in time: what is lost when a finding must come closer.
 *
 * @param points in ascending order of tolerance
 */
public record ToleranceCurve(List<Point> points) {

    private static final double[] SECONDS = {0.1, 0.2, 0.3, 0.5, 0.75, 1.0, 1.5, 2.0};

    /**
     * @param seconds the tolerance
     * @param precision NaN without a finding
     * @param recall NaN without a label
     * @param f1 NaN without either
     */
    public record Point(double seconds, double precision, double recall, double f1) {}

    public ToleranceCurve {
        points = List.copyOf(points);
    }

    /** From 0.1 s to 2 s. */
    public static ToleranceCurve of(List<EventFilm> films, EventTolerance tolerance) {
        List<Point> points = new ArrayList<>();
        for (double seconds : SECONDS) {
            EventScores scores = EventScores.of(
                    films.stream().map(f -> f.match(tolerance.within(seconds))).toList());
            points.add(new Point(seconds, scores.precision(), scores.recall(), scores.f1()));
        }
        return new ToleranceCurve(points);
    }
}
