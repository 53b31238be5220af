package floorgauge.sampleclips.labels;

import java.util.Objects;

/**
 * A span of which an annotator can't tell what happened.
 *
 * @param fromSeconds start
 * @param toSeconds end
 * @param why in a few words
 */
public record UnclearSpan(double fromSeconds, double toSeconds, String why) {

    public UnclearSpan {
        Objects.requireNonNull(why, "why");
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a span ends after its start: " + fromSeconds);
        }
    }
}
