package floorgauge.events.screen;

import floorgauge.events.standards.Standards;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A screen's quality: the weighted mean of the parts that were seen, each 0 to 1, times 100.
 *
 * @param parts those that were seen, with their scores
 */
public record ScreenQuality(Map<QualityPart, Double> parts) {

    public ScreenQuality {
        EnumMap<QualityPart, Double> copy = new EnumMap<>(QualityPart.class);
        copy.putAll(parts);
        copy.forEach((part, score) -> {
            if (!(score >= 0 && score <= 1)) {
                throw new IllegalArgumentException(part + " must lie in 0 to 1: " + score);
            }
        });
        parts = Collections.unmodifiableMap(copy);
    }

    /** 0 to 100; empty where no part with a weight was seen. */
    public OptionalDouble points(Standards standards) {
        double sum = 0;
        double weights = 0;
        for (Map.Entry<QualityPart, Double> part : parts.entrySet()) {
            double weight = standards.of(part.getKey().weight());
            sum += weight * part.getValue();
            weights += weight;
        }
        return weights > 0 ? OptionalDouble.of(100 * sum / weights) : OptionalDouble.empty();
    }
}
