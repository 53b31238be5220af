package floorgauge.events.diagram;

import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws measured distances as a draughtsman does: extension lines, a dimension line with slim arrowheads, the figure beside it.
 * Each stands on the side and at the distance where it is clearest of marks, ways and other figures.
 */
final class DimensionDrawing {

    private static final double PEN = 0.2;
    private static final double BEYOND_PEN = 0.34;
    private static final double ARROW_LENGTH = 1.5;
    private static final double ARROW_HALF = 0.36;
    private static final double TAIL = 2.6;
    private static final double EXTENSION_GAP = 0.3;
    private static final double EXTENSION_BEYOND = 0.7;
    private static final double LETTERS = 2.4;
    private static final double[] OFFSETS = {3.4, -3.4, 4.6, -4.6, 6, -6, 7.6, -7.6, 9.4, -9.4};

    private final SvgText svg;
    private final Page page;
    private final List<PlayerDot> dots;
    private final List<List<double[]>> lines;
    private final List<double[]> labels = new ArrayList<>();

    DimensionDrawing(SvgText svg, Page page, List<PlayerDot> dots, List<List<double[]>> lines) {
        this.svg = svg;
        this.page = page;
        this.dots = dots;
        this.lines = lines;
    }

    void draw(MeasuredSpan span) {
        double[] a = page.at(span.from());
        double[] b = page.at(span.to());
        double[] u = Polyline.unit(a, b);
        double[] n = {-u[1], u[0]};
        String text = Words.of(span.figure());
        double best = OFFSETS[0];
        double least = Double.POSITIVE_INFINITY;
        for (double offset : OFFSETS) {
            double cost = cost(labelBox(a, b, n, offset, text), a, b, n, offset) + 0.12 * Math.abs(offset);
            if (cost < least) {
                least = cost;
                best = offset;
            }
        }
        draw(a, b, u, n, best, text, span.isBeyond());
    }

    private void draw(double[] a, double[] b, double[] u, double[] n, double offset, String text, boolean beyond) {
        double side = Math.signum(offset);
        double pen = beyond ? BEYOND_PEN : PEN;
        svg.group(beyond ? "fg-dimension fg-beyond" : "fg-dimension", "");
        for (double[] end : List.of(a, b)) {
            svg.line(
                    List.of(shifted(end, n, side * EXTENSION_GAP), shifted(end, n, offset + side * EXTENSION_BEYOND)),
                    pen * 0.8,
                    "");
        }
        double[] p = shifted(a, n, offset);
        double[] q = shifted(b, n, offset);
        boolean roomy = Polyline.distance(p, q) > 2.6 * ARROW_LENGTH;
        if (roomy) {
            svg.line(List.of(p, q), pen, "");
            arrow(p, u, -1);
            arrow(q, u, 1);
        } else {
            svg.line(List.of(shifted(p, u, -TAIL), shifted(q, u, TAIL)), pen, "");
            arrow(p, u, 1);
            arrow(q, u, -1);
        }
        double[] box = labelBox(a, b, n, offset, text);
        svg.text(new double[] {box[0], box[1]}, LETTERS, text, beyond, false);
        svg.end();
        labels.add(box);
    }

    /** An arrowhead with its tip at p, pointing along u or against it. */
    private void arrow(double[] p, double[] u, double way) {
        double[] base = shifted(p, u, -way * ARROW_LENGTH);
        double[] n = {-u[1], u[0]};
        svg.solid(List.of(p, shifted(base, n, ARROW_HALF), shifted(base, n, -ARROW_HALF)));
    }

    private static double[] shifted(double[] p, double[] u, double by) {
        return new double[] {p[0] + u[0] * by, p[1] + u[1] * by};
    }

    /** Middle and half sizes of the figure's letters: {x, y, half width, half height}. */
    private double[] labelBox(double[] a, double[] b, double[] n, double offset, String text) {
        double halfWidth = text.length() * LETTERS * SvgText.DIGIT_WIDTH / 2 * 0.95;
        double halfHeight = LETTERS * SvgText.CAP_HEIGHT / 2;
        double side = Math.signum(offset);
        double room = Math.abs(n[0]) * halfWidth + Math.abs(n[1]) * halfHeight + 0.7;
        double[] middle = shifted(Polyline.between(a, b, 0.5), n, offset + side * room);
        double x = Math.max(halfWidth + 0.5, Math.min(Page.WIDTH - halfWidth - 0.5, middle[0]));
        double y = Math.max(halfHeight + 0.5, Math.min(page.height() - halfHeight - 0.5, middle[1]));
        double[] box = {x, y, halfWidth, halfHeight};
        return box;
    }

    private double cost(double[] box, double[] a, double[] b, double[] n, double offset) {
        double cost = 0;
        double[] p = shifted(a, n, offset);
        double[] q = shifted(b, n, offset);
        for (PlayerDot dot : dots) {
            cost += overlap(box, dot.at(), dot.radius() + 0.3) ? 6 : 0;
            cost += Polyline.distance(dot.at(), p, q) < dot.radius() + 0.4 ? 2 : 0;
        }
        for (double[] other : labels) {
            boolean apart = Math.abs(box[0] - other[0]) > box[2] + other[2] + 0.6
                    || Math.abs(box[1] - other[1]) > box[3] + other[3] + 0.6;
            cost += apart ? 0 : 8;
        }
        for (List<double[]> line : lines) {
            cost += crosses(box, line) ? 1.2 : 0;
            cost += 0.3 * Polyline.crossings(List.of(p, q), line);
        }
        boolean moved = Math.abs((box[0] - (p[0] + q[0]) / 2) * n[0] + (box[1] - (p[1] + q[1]) / 2) * n[1]) < 0.5;
        boolean outside = p[0] < 1
                || q[0] < 1
                || p[1] < 1
                || q[1] < 1
                || Math.max(p[0], q[0]) > Page.WIDTH - 1
                || Math.max(p[1], q[1]) > page.height() - 1;
        return cost + (outside ? 6 : 0) + (moved ? 4 : 0);
    }

    private static boolean overlap(double[] box, double[] at, double radius) {
        double dx = Math.max(0, Math.abs(at[0] - box[0]) - box[2]);
        double dy = Math.max(0, Math.abs(at[1] - box[1]) - box[3]);
        return Math.hypot(dx, dy) < radius;
    }

    private static boolean crosses(double[] box, List<double[]> line) {
        double whole = Polyline.length(line);
        for (double s = 0; s <= whole; s += 0.5) {
            if (overlap(box, Polyline.at(line, s), 0.3)) {
                return true;
            }
        }
        return false;
    }

    /** A figure without a line of its own, such as an area's. */
    void label(double[] at, String text, boolean beyond) {
        svg.group(beyond ? "fg-dimension fg-beyond" : "fg-dimension", "");
        svg.text(at, LETTERS, text, beyond, false);
        svg.end();
        labels.add(new double[] {at[0], at[1], text.length() * LETTERS * SvgText.DIGIT_WIDTH / 2, LETTERS / 2});
    }
}
