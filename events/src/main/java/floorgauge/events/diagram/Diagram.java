package floorgauge.events.diagram;

import java.util.List;
import java.util.Objects;

/**
 * A possession or a finding on paper, in one drawing or in several that follow each other.
 *
 * @param title a few words
 * @param panels in order of time, at least one
 */
public record Diagram(String title, List<DiagramPanel> panels) {

    public Diagram {
        Objects.requireNonNull(title, "title");
        panels = List.copyOf(panels);
        if (panels.isEmpty()) {
            throw new IllegalArgumentException("a diagram has a drawing at least");
        }
    }

    /** The text equivalent of all drawings, one after the other. */
    public String description() {
        return String.join(" ", panels.stream().map(DiagramPanel::description).toList());
    }
}
