package floorgauge.events.finding;

import java.util.Objects;

/**
 * What a figure was held against.
 *
 * @param standard the setting's name in the standards file
 * @param value in the figure's unit
 * @param sound on which side of the value a sound figure lies
 */
public record Threshold(String standard, double value, Side sound) {

    /** A side of a threshold. */
    public enum Side {
        AT_MOST,
        AT_LEAST
    }

    public Threshold {
        Objects.requireNonNull(standard, "standard");
        Objects.requireNonNull(sound, "sound");
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("threshold must be finite: " + value);
        }
    }
}
