package floorgauge.events.diagram;

import java.util.List;
import java.util.Objects;

/**
 * One drawing.
 *
 * @param title a few words, such as {@code Drawing 1 of 2}
 * @param fromSeconds start of what it shows, presentation time
 * @param toSeconds end of what it shows
 * @param steps the numbered steps in plain words, from number {@link #firstNumber} on
 * @param firstNumber number of its first step in the drawing
 * @param description the whole in plain words, for those who cannot see it
 * @param svg one element that stands by itself: black on white unless the page around it colours {@code .fg-ink} and {@code .fg-paper};
 *     its view box is in millimetres at 60 mm width
 */
public record DiagramPanel(
        String title,
        double fromSeconds,
        double toSeconds,
        List<String> steps,
        int firstNumber,
        String description,
        String svg) {

    public DiagramPanel {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(description, "description");
        Objects.requireNonNull(svg, "svg");
        steps = List.copyOf(steps);
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a drawing ends after its start: " + fromSeconds + ", " + toSeconds);
        }
    }
}
