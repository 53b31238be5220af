package floorgauge.events.standards;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/**
 * A team's standards: a value for every {@link Setting}, SI, each within its range.
 *
 * @param team whose they are; empty text for the defaults
 * @param values every setting
 */
public record Standards(String team, Map<Setting, Double> values) {

    public Standards {
        Objects.requireNonNull(team, "team");
        EnumMap<Setting, Double> all = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            double value = values.getOrDefault(setting, setting.defaultValue());
            if (!(value >= setting.least() && value <= setting.most())) {
                throw new IllegalArgumentException(setting.key() + " must lie in " + setting.least() + " to "
                        + setting.most() + " " + setting.quantity().unit() + ": " + value);
            }
            all.put(setting, value);
        }
        values = Collections.unmodifiableMap(all);
    }

    /** The defaults of every setting. */
    public static Standards defaults() {
        return new Standards("", Map.of());
    }

    /** The value of a setting, SI. */
    public double of(Setting setting) {
        return values.get(setting);
    }

    /** These standards with one value changed. */
    public Standards with(Setting setting, double value) {
        EnumMap<Setting, Double> changed = new EnumMap<>(values);
        changed.put(setting, value);
        return new Standards(team, changed);
    }
}
