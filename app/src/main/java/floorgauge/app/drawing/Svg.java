package floorgauge.app.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** Writes one SVG element piece by piece. Coordinates are in the units of its own view box. */
public final class Svg {

    private static final int DECIMALS = 2;

    private final StringBuilder out = new StringBuilder();

    /**
     * Starts a drawing.
     *
     * @param left left edge of the view box
     * @param top upper edge of the view box
     * @param width above 0
     * @param height above 0
     * @param style class names
     * @param textEquivalent what a reader hears who cannot see it; empty where words beside the drawing say it already
     */
    public Svg(double left, double top, double width, double height, String style, String textEquivalent) {
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"")
                .append(style)
                .append("\" viewBox=\"")
                .append(number(left))
                .append(' ')
                .append(number(top))
                .append(' ')
                .append(number(width))
                .append(' ')
                .append(number(height))
                .append(
                        textEquivalent.isEmpty()
                                ? "\" aria-hidden=\"true\">"
                                : "\" role=\"img\" aria-label=\"" + escape(textEquivalent) + "\">");
    }

    /** Text that may hold anything, made safe for element content and attribute values. */
    public static String escape(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.append(c < ' ' ? ' ' : c);
            }
        }
        return safe.toString();
    }

    /** A coordinate, rounded, without a locale. */
    static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    public Svg line(double x1, double y1, double x2, double y2, String style) {
        out.append("<line");
        attribute("x1", x1).attribute("y1", y1).attribute("x2", x2).attribute("y2", y2);
        return close(style);
    }

    public Svg circle(double x, double y, double radius, String style) {
        out.append("<circle");
        attribute("cx", x).attribute("cy", y).attribute("r", radius);
        return close(style);
    }

    public Svg rectangle(double x, double y, double width, double height, String style) {
        out.append("<rect");
        attribute("x", x)
                .attribute("y", y)
                .attribute("width", Math.max(0, width))
                .attribute("height", Math.max(0, height));
        return close(style);
    }

    /** An open line through the points, each {x, y}. */
    public Svg polyline(List<double[]> points, String style) {
        out.append("<polyline");
        return points(points, style);
    }

    /** A closed area with the points, each {x, y}, on its corners. */
    public Svg polygon(List<double[]> points, String style) {
        out.append("<polygon");
        return points(points, style);
    }

    /** An arc of a circle from one point to another; {@code sweep} as SVG has it, {@code large} for over half a turn. */
    public Svg arc(
            double x1, double y1, double radius, boolean large, boolean sweep, double x2, double y2, String style) {
        out.append("<path d=\"M").append(number(x1)).append(' ').append(number(y1));
        out.append('A')
                .append(number(radius))
                .append(' ')
                .append(number(radius))
                .append(" 0 ");
        out.append(large ? '1' : '0').append(' ').append(sweep ? '1' : '0').append(' ');
        out.append(number(x2)).append(' ').append(number(y2)).append('"');
        return close(style);
    }

    /**
     * A line of text.
     *
     * @param anchor {@code start}, {@code middle} or {@code end}: which part of it stands at x
     */
    public Svg text(double x, double y, String anchor, String style, String text) {
        out.append("<text");
        attribute("x", x).attribute("y", y);
        out.append(" text-anchor=\"")
                .append(anchor)
                .append("\" class=\"")
                .append(style)
                .append("\">");
        out.append(escape(text)).append("</text>");
        return this;
    }

    /** A picture from a data address, stretched over the rectangle. */
    public Svg image(double x, double y, double width, double height, String dataAddress) {
        out.append("<image");
        attribute("x", x).attribute("y", y).attribute("width", width).attribute("height", height);
        out.append(" preserveAspectRatio=\"none\" href=\"").append(dataAddress).append("\"/>");
        return this;
    }

    /** Starts a group; {@link #end} closes it. */
    public Svg group(String style) {
        out.append("<g class=\"").append(style).append("\">");
        return this;
    }

    public Svg end() {
        out.append("</g>");
        return this;
    }

    /** The finished element. */
    public String finish() {
        return out + "</svg>";
    }

    private Svg points(List<double[]> points, String style) {
        out.append(" points=\"");
        for (int i = 0; i < points.size(); i++) {
            double[] point = points.get(i);
            out.append(i == 0 ? "" : " ").append(number(point[0])).append(',').append(number(point[1]));
        }
        out.append('"');
        return close(style);
    }

    private Svg attribute(String name, double value) {
        out.append(' ').append(name).append("=\"").append(number(value)).append('"');
        return this;
    }

    private Svg close(String style) {
        out.append(" class=\"").append(style).append("\"/>");
        return this;
    }
}
