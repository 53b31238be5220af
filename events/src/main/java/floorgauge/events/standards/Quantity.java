package floorgauge.events.standards;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What kind of quantity a setting is, with the units that may be written for it. Inside the program all are SI. */
public enum Quantity {
    LENGTH("m", Map.of("m", 1.0, "cm", 0.01, "ft", 0.3048, "in", 0.0254), "2.4 m, 240 cm or 8 ft"),
    AREA("m2", Map.of("m2", 1.0, "ft2", 0.3048 * 0.3048), "28 m2 or 301 ft2"),
    TIME("s", Map.of("s", 1.0, "ms", 0.001), "0.6 s or 600 ms"),
    SPEED("m/s", Map.of("m/s", 1.0, "ft/s", 0.3048, "km/h", 1 / 3.6), "4.5 m/s or 14.8 ft/s"),
    /** Squared metres over seconds to the fifth power: the spectral density of jerk. */
    JERK_DENSITY("m2/s5", Map.of("m2/s5", 1.0), "20 m2/s5"),
    /** A share or a probability, 0 to 1. */
    SHARE("", Map.of("", 1.0, "%", 0.01), "0.8 or 80 %"),
    /** A plain number. */
    NUMBER("", Map.of("", 1.0), "1.5"),
    /** Out of 100. */
    POINTS("", Map.of("", 1.0), "50");

    private final String unit;
    private final Map<String, Double> factors;
    private final String example;

    Quantity(String unit, Map<String, Double> factors, String example) {
        this.unit = unit;
        this.factors = factors;
        this.example = example;
    }

    /** The SI unit's symbol; empty for a plain number. */
    public String unit() {
        return unit;
    }

    /** How a value may be written, for a hint. */
    public String example() {
        return example;
    }

    /** What a value in this unit is multiplied by to be SI; empty where the unit is not one of this quantity's. */
    Optional<Double> factor(String writtenUnit) {
        return Optional.ofNullable(factors.get(writtenUnit));
    }

    /** The units that may be written, in order of their names. */
    List<String> units() {
        return new TreeMap<>(factors)
                .keySet().stream().filter(u -> !u.isEmpty()).collect(Collectors.toList());
    }
}
