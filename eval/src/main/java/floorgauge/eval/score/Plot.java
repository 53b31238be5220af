package floorgauge.eval.score;

import java.util.List;
import java.util.Locale;

/**
 * A small plot as SVG line work: two axes from 0 that end in their figures, thin lines, marks by shape and dash rather than
 * by hue. Coordinates of points are in the axes' units.
 */
final class Plot {

    private static final double WIDTH = 240;
    private static final double HEIGHT = 180;
    private static final double LEFT = 36;
    private static final double BELOW = 30;
    private static final double ABOVE = 10;

    private final StringBuilder svg = new StringBuilder();
    private final double largestX;

    /**
     * @param largestX right end of the axis; the axis upwards always runs from 0 to 1
     * @param xWords what runs to the right
     * @param textEquivalent what the plot says, for a reader who cannot see it
     */
    Plot(double largestX, String xWords, String yWords, String textEquivalent) {
        this.largestX = largestX;
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"plot\" role=\"img\" viewBox=\"0 0 ")
                .append(number(WIDTH))
                .append(' ')
                .append(number(HEIGHT))
                .append("\" aria-label=\"")
                .append(escape(textEquivalent))
                .append("\">");
        line(0, 0, largestX, 0, "axis");
        line(0, 0, 0, 1, "axis");
        text(x(0), HEIGHT - BELOW + 12, "middle", "0");
        text(x(largestX), HEIGHT - BELOW + 12, "middle", Decimals.plain(largestX));
        text(LEFT - 4, y(1) + 3, "end", "1");
        text((x(0) + x(largestX)) / 2, HEIGHT - 4, "middle", xWords);
        text(4, (y(0) + y(1)) / 2, "start", yWords);
    }

    /** A line through points, each {x, y}; points that are not defined are left out. */
    Plot curve(List<double[]> points, String style) {
        StringBuilder path = new StringBuilder();
        for (double[] point : points) {
            if (Double.isFinite(point[0]) && Double.isFinite(point[1])) {
                path.append(path.length() == 0 ? "" : " ")
                        .append(number(x(point[0])))
                        .append(',')
                        .append(number(y(point[1])));
            }
        }
        svg.append("<polyline class=\"")
                .append(style)
                .append("\" points=\"")
                .append(path)
                .append("\"/>");
        return this;
    }

    Plot line(double x1, double y1, double x2, double y2, String style) {
        return curve(List.of(new double[] {x1, y1}, new double[] {x2, y2}), style);
    }

    /** A small open circle. */
    Plot mark(double px, double py) {
        svg.append("<circle class=\"mark\" r=\"2.5\" cx=\"")
                .append(number(x(px)))
                .append("\" cy=\"")
                .append(number(y(py)))
                .append("\"/>");
        return this;
    }

    String finish() {
        return svg + "</svg>";
    }

    private void text(double px, double py, String anchor, String words) {
        svg.append("<text x=\"")
                .append(number(px))
                .append("\" y=\"")
                .append(number(py))
                .append("\" text-anchor=\"")
                .append(anchor)
                .append("\">")
                .append(escape(words))
                .append("</text>");
    }

    private double x(double value) {
        return LEFT + value / largestX * (WIDTH - LEFT - 12);
    }

    private double y(double value) {
        return HEIGHT - BELOW - value * (HEIGHT - BELOW - ABOVE);
    }

    static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
