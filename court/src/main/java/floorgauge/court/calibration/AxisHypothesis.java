package floorgauge.court.calibration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How one axis of the grid may become metres: {@code metres = scale value + offset}, from two of its lines taken for two of
 * the court's.
 *
 * @param support pixels of lines that then fall on lines of the court
 */
record AxisHypothesis(double scale, double offset, double support) {

    /** How far a painted line may be off the rule book in a gym. */
    private static final double PAINT_TOLERANCE_METRES = 0.10;

    /**
     * @param lines of the grid
     * @param court positions of the court's lines on this axis, metres
     * @param sign that the scale must have
     * @param most how many at most
     * @return hypotheses, the best supported first
     */
    static List<AxisHypothesis> of(List<FloorGrid.GridLine> lines, double[] court, int sign, int most) {
        List<AxisHypothesis> all = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            for (int j = i + 1; j < lines.size(); j++) {
                for (double a : court) {
                    for (double b : court) {
                        double scale =
                                (a - b) / (lines.get(i).value() - lines.get(j).value());
                        if (a != b && Double.isFinite(scale) && scale * sign > 0) {
                            double offset = a - scale * lines.get(i).value();
                            all.add(new AxisHypothesis(scale, offset, support(lines, court, scale, offset)));
                        }
                    }
                }
            }
        }
        all.sort(Comparator.comparingDouble((AxisHypothesis h) -> -h.support)
                .thenComparingDouble(AxisHypothesis::scale)
                .thenComparingDouble(AxisHypothesis::offset));
        return distinct(all, most);
    }

    private static double support(List<FloorGrid.GridLine> lines, double[] court, double scale, double offset) {
        double sum = 0;
        for (double position : court) {
            double best = 0;
            for (FloorGrid.GridLine line : lines) {
                double off = Math.abs(scale * line.value() + offset - position);
                if (off <= PAINT_TOLERANCE_METRES + Math.abs(scale) * line.tolerance()) {
                    best = Math.max(best, line.pixels());
                }
            }
            sum += best;
        }
        return sum;
    }

    private static List<AxisHypothesis> distinct(List<AxisHypothesis> sorted, int most) {
        List<AxisHypothesis> kept = new ArrayList<>();
        for (AxisHypothesis h : sorted) {
            if (kept.size() >= most) {
                break;
            }
            boolean known = false;
            for (AxisHypothesis k : kept) {
                // The same where it puts the court's middle and a point 7 m off within 15 cm.
                double at = -h.offset / h.scale;
                double farther = (7 - h.offset) / h.scale;
                known |= Math.abs(k.scale * at + k.offset) < 0.15 && Math.abs(k.scale * farther + k.offset - 7) < 0.15;
            }
            if (!known) {
                kept.add(h);
            }
        }
        return kept;
    }
}
