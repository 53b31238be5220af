package floorgauge.events.finding;

import java.util.Objects;

/**
 * A named instant on the time rule below the frames.
 *
 * @param timeSeconds presentation time
 * @param standardErrorSeconds at least 0
 * @param words such as set, contact, window opens, release
 */
public record Tick(double timeSeconds, double standardErrorSeconds, String words) {

    public Tick {
        Objects.requireNonNull(words, "words");
        if (!Double.isFinite(timeSeconds)) {
            throw new IllegalArgumentException("time must be finite: " + timeSeconds);
        }
        if (!(standardErrorSeconds >= 0)) {
            throw new IllegalArgumentException("standard error must be at least 0: " + standardErrorSeconds);
        }
    }
}
