package floorgauge.events.finding;

import java.util.Objects;

/**
 * Something that could not be measured. It differs from a "no".
 *
 * @param what the figure or part
 * @param why in plain words
 */
public record NotSeen(String what, String why) {

    public NotSeen {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(why, "why");
    }
}
