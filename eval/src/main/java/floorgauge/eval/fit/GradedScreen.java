package floorgauge.eval.fit;

import floorgauge.eval.events.EventMatches;
import floorgauge.events.screen.QualityPart;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A screen with a coach's grade and the parts of its quality that were seen.
 *
 * @param grade 1 to 5
 * @param parts each 0 to 1, at least one
 */
public record GradedScreen(int grade, Map<QualityPart, Double> parts) {

    private static final String PREFIX = "quality: ";

    public GradedScreen {
        if (grade < 1 || grade > 5) {
            throw new IllegalArgumentException("a grade lies in 1 to 5: " + grade);
        }
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("a graded screen needs a part that was seen");
        }
        parts = Collections.unmodifiableMap(new EnumMap<>(parts));
    }

    /** The graded screens among the matches of a film. */
    public static List<GradedScreen> of(EventMatches matches) {
        return matches.pairs().stream()
                .filter(p -> p.label().grade().isPresent())
                .filter(p -> !parts(p).isEmpty())
                .map(p -> new GradedScreen(p.label().grade().getAsInt(), parts(p)))
                .toList();
    }

    private static Map<QualityPart, Double> parts(EventMatches.Pair pair) {
        EnumMap<QualityPart, Double> parts = new EnumMap<>(QualityPart.class);
        for (QualityPart part : QualityPart.values()) {
            Double score = pair.result().figures().get(PREFIX + part.words());
            if (score != null) {
                parts.put(part, score);
            }
        }
        return parts;
    }

    /** The middle of the grade's band of quality: 10, 30, 50, 70, 90. */
    double target() {
        return 20.0 * grade - 10;
    }

    /** Weighted mean of the parts times 100; NaN where all that was seen weighs nothing. */
    double quality(double[] weights) {
        double sum = 0;
        double total = 0;
        for (Map.Entry<QualityPart, Double> part : parts.entrySet()) {
            double weight = weights[part.getKey().ordinal()];
            sum += weight * part.getValue();
            total += weight;
        }
        return total > 0 ? 100 * sum / total : Double.NaN;
    }
}
