package floorgauge.events.script;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * An action that a team means to run.
 *
 * @param name short
 * @param about one line about it; may be empty
 * @param ball the role that starts with the ball
 * @param players each role with the place where it starts, in the file's order
 * @param variants every way through the script's alternatives, each a list of steps in order
 */
public record Script(
        String name,
        String about,
        String ball,
        Map<String, Optional<String>> players,
        List<List<ScriptStep>> variants) {

    public Script {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(about, "about");
        Objects.requireNonNull(ball, "ball");
        players = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(players));
        variants = variants.stream().map(List::copyOf).toList();
        if (variants.isEmpty() || variants.stream().anyMatch(List::isEmpty)) {
            throw new IllegalArgumentException("a script has a step at least: " + name);
        }
    }

    /** The roles in the file's order. */
    public List<String> roles() {
        return List.copyOf(players.keySet());
    }
}
