package floorgauge.events.finding;

import java.util.Objects;

/**
 * A moment that shows a finding.
 *
 * @param timeSeconds presentation time; the nearest frame of the film shows it
 * @param caption a few words
 */
public record KeyFrame(double timeSeconds, String caption) {

    public KeyFrame {
        Objects.requireNonNull(caption, "caption");
        if (!Double.isFinite(timeSeconds)) {
            throw new IllegalArgumentException("time must be finite: " + timeSeconds);
        }
    }
}
