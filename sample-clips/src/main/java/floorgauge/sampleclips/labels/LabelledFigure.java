package floorgauge.sampleclips.labels;

import floorgauge.events.finding.Unit;
import java.util.Objects;

/**
 * A number that an annotator, or the exact motion, gives for an event.
 *
 * @param name in the trade's words, one of {@link FigureNames}
 * @param value in {@code unit}
 * @param unit of the value
 */
public record LabelledFigure(String name, double value, Unit unit) {

    public LabelledFigure {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite: " + value);
        }
    }
}
