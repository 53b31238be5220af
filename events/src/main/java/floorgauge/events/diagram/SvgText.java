package floorgauge.events.diagram;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** Writes one SVG element as text; coordinates in millimetres, y down, rounded to a hundredth. */
final class SvgText {

    private final StringBuilder out = new StringBuilder();

    SvgText(double width, double height, String title, String description) {
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"diagram\" viewBox=\"0 0 ")
                .append(number(width))
                .append(' ')
                .append(number(height))
                .append("\" role=\"img\" aria-label=\"")
                .append(escape(title + ". " + description))
                .append("\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">");
        out.append("<title>").append(escape(title)).append("</title>");
        out.append("<desc>").append(escape(description)).append("</desc>");
    }

    /** A rounded number without a locale. */
    static String number(double value) {
        BigDecimal rounded =
                BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    static String escape(String text) {
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

    /** An open line through points. */
    void line(List<double[]> points, double width, String dashes) {
        StringBuilder d = new StringBuilder();
        for (int i = 0; i < points.size(); i++) {
            d.append(i == 0 ? "M" : "L").append(pair(points.get(i)));
        }
        path(d.toString(), width, dashes, "");
    }

    /** A path in SVG's own words, in ink. {@code more} holds further attributes. */
    void path(String d, double width, String dashes, String more) {
        out.append("<path class=\"fg-ink\" stroke=\"currentColor\" d=\"")
                .append(d)
                .append("\" stroke-width=\"")
                .append(number(width))
                .append('"');
        if (!dashes.isEmpty()) {
            out.append(" stroke-dasharray=\"").append(dashes).append("\" stroke-linecap=\"butt\"");
        }
        out.append(more.isEmpty() ? "" : " ").append(more).append("/>");
    }

    /** A broad line in the colour of the paper, under what must stay legible. */
    void halo(String d, double width) {
        out.append("<path class=\"fg-halo\" stroke=\"#fff\" d=\"")
                .append(d)
                .append("\" stroke-width=\"")
                .append(number(width))
                .append("\"/>");
    }

    /** A closed shape filled with ink. */
    void solid(List<double[]> corners) {
        StringBuilder d = new StringBuilder();
        for (int i = 0; i < corners.size(); i++) {
            d.append(i == 0 ? "M" : "L").append(pair(corners.get(i)));
        }
        out.append("<path class=\"fg-solid\" fill=\"currentColor\" d=\"")
                .append(d)
                .append("Z\"/>");
    }

    /** A disc with paper inside and an ink outline. */
    void ring(double[] at, double radius, double width) {
        out.append("<circle class=\"fg-ink fg-paper\" fill=\"#fff\" stroke=\"currentColor\" cx=\"")
                .append(number(at[0]))
                .append("\" cy=\"")
                .append(number(at[1]))
                .append("\" r=\"")
                .append(number(radius))
                .append("\" stroke-width=\"")
                .append(number(width))
                .append("\"/>");
    }

    /** A disc of ink with a rim of paper. */
    void disc(double[] at, double radius) {
        out.append("<circle class=\"fg-solid fg-halo\" fill=\"currentColor\" stroke=\"#fff\" cx=\"")
                .append(number(at[0]))
                .append("\" cy=\"")
                .append(number(at[1]))
                .append("\" r=\"")
                .append(number(radius))
                .append("\" stroke-width=\"0.4\" paint-order=\"stroke\"/>");
    }

    /** Text with its middle at a place. {@code inverse}: in the colour of the paper; else in ink with a rim of paper. */
    void text(double[] at, double size, String text, boolean bold, boolean inverse) {
        out.append("<text class=\"")
                .append(inverse ? "fg-paper" : "fg-solid fg-halo")
                .append("\" fill=\"")
                .append(inverse ? "#fff" : "currentColor")
                .append('"');
        if (!inverse) {
            out.append(" stroke=\"#fff\" stroke-width=\"0.7\" paint-order=\"stroke\"");
        }
        // A style, since a page's rules for text would go before an attribute.
        out.append(" style=\"font-family:'Liberation Sans',Arial,Helvetica,sans-serif;font-size:")
                .append(number(size))
                .append(bold ? "px;font-weight:700" : "px;font-weight:400")
                .append("\" text-anchor=\"middle\" x=\"")
                .append(number(at[0]))
                .append("\" y=\"")
                .append(number(at[1] + size * CAP_HEIGHT / 2))
                .append("\">")
                .append(escape(text))
                .append("</text>");
    }

    /** Height of figures and capitals over the size of the letters, in the usual sans serif faces. */
    static final double CAP_HEIGHT = 0.72;

    /** Width of a figure over the size of the letters. */
    static final double DIGIT_WIDTH = 0.556;

    void group(String style, String more) {
        out.append("<g class=\"")
                .append(style)
                .append('"')
                .append(more.isEmpty() ? "" : " ")
                .append(more)
                .append('>');
    }

    void end() {
        out.append("</g>");
    }

    static String pair(double[] point) {
        return number(point[0]) + " " + number(point[1]);
    }

    String finish() {
        return out + "</svg>";
    }
}
