package floorgauge.app.sheet;

import floorgauge.events.finding.Figure;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Means of figures. The standard error is that of the mean of the measured values, sqrt(sum of variances) / n, as far as every figure
 * has an error: it says how well the mean was measured, not how much the player varies.
 */
final class Means {

    private Means() {}

    /** @param figures at least one, of one unit */
    static Figure of(List<Figure> figures) {
        double mean = figures.stream()
                .mapToDouble(Figure::value)
                .average()
                .orElseThrow(() -> new IllegalArgumentException("no figure"));
        boolean all = figures.stream().allMatch(f -> f.standardError().isPresent());
        OptionalDouble error = OptionalDouble.empty();
        if (all) {
            double variance = figures.stream()
                    .mapToDouble(f -> Math.pow(f.standardError().getAsDouble(), 2))
                    .sum();
            error = OptionalDouble.of(Math.sqrt(variance) / figures.size());
        }
        Figure first = figures.get(0);
        return new Figure(first.name(), mean, error, first.unit(), first.threshold());
    }
}
