package floorgauge.app.sheet;

import floorgauge.app.drawing.Svg;
import java.util.Set;

/** Writes HTML element by element; all text is made safe on its way in. */
public final class Html {

    /** Elements within a line of text, where a line break would show as a space. */
    private static final Set<String> INLINE = Set.of("a", "b", "span");

    private final StringBuilder out = new StringBuilder();

    /** Opens an element; {@code attributes} is trusted text of this program, such as {@code class="fact"}. */
    public Html open(String element, String attributes) {
        out.append('<').append(element);
        if (!attributes.isEmpty()) {
            out.append(' ').append(attributes);
        }
        out.append('>');
        return this;
    }

    public Html open(String element) {
        return open(element, "");
    }

    public Html close(String element) {
        out.append("</").append(element).append(INLINE.contains(element) ? ">" : ">\n");
        return this;
    }

    /** Text that may hold anything. */
    public Html text(String text) {
        out.append(Svg.escape(text));
        return this;
    }

    /** A whole element that holds text. */
    public Html element(String element, String attributes, String text) {
        return open(element, attributes).text(text).close(element);
    }

    public Html element(String element, String text) {
        return element(element, "", text);
    }

    /** Markup that this program made. */
    public Html markup(String markup) {
        out.append(markup);
        return this;
    }

    public String finish() {
        return out.toString();
    }
}
