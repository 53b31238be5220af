package floorgauge.sampleclips.labels;

import java.util.Objects;

/**
 * Which scene was drawn.
 *
 * @param name in the library
 * @param seed it was played with
 */
public record SceneReference(String name, long seed) {

    public SceneReference {
        Objects.requireNonNull(name, "name");
    }
}
