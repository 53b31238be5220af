package floorgauge.events.finding;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A measured number with its error.
 *
 * @param name what it is, in the trade's words, lower case
 * @param value in {@code unit}
 * @param standardError one standard deviation, in {@code unit}; empty where the figure is a count or a share without one
 * @param unit of value, error and threshold
 * @param threshold what it was held against; empty where nothing was
 */
public record Figure(
        String name, double value, OptionalDouble standardError, Unit unit, Optional<Threshold> threshold) {

    public Figure {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(standardError, "standardError");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(threshold, "threshold");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite: " + value);
        }
        if (standardError.isPresent()
                && !(standardError.getAsDouble() >= 0 && Double.isFinite(standardError.getAsDouble()))) {
            throw new IllegalArgumentException(
                    "standard error of " + name + " must be at least 0: " + standardError.getAsDouble());
        }
    }

    public static Figure of(String name, double value, double standardError, Unit unit) {
        return new Figure(name, value, OptionalDouble.of(standardError), unit, Optional.empty());
    }

    /** A figure without an error of its own. */
    public static Figure plain(String name, double value, Unit unit) {
        return new Figure(name, value, OptionalDouble.empty(), unit, Optional.empty());
    }

    /** This figure, held against a standard. */
    public Figure against(Threshold standard) {
        return new Figure(name, value, standardError, unit, Optional.of(standard));
    }
}
