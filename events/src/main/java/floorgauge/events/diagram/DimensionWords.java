package floorgauge.events.diagram;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Mark;
import floorgauge.events.words.Words;
import java.util.Optional;

/** What a mark measures, as words. */
final class DimensionWords {

    private DimensionWords() {}

    static Optional<String> of(Mark mark) {
        if (mark instanceof Mark.Distance d) {
            return Optional.of(named(d.figure()));
        }
        if (mark instanceof Mark.DistanceToPoint d) {
            return Optional.of(named(d.figure()));
        }
        if (mark instanceof Mark.Area a) {
            return Optional.of(named(a.figure()));
        }
        return Optional.empty();
    }

    private static String named(Figure figure) {
        return figure.name() + " " + Words.of(figure);
    }
}
