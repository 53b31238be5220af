package floorgauge.app.drawing;

import java.util.List;

/**
 * A measured distance drawn as a draughtsman does (ISO 129-1's manner: extension lines, a dimension line with slim
 * arrowheads, the figure beside it; from memory). Where there is no room between the extension lines the arrows stand
 * outside and point inwards.
 *
 * @param x1 first end of what is measured
 * @param y1 first end of what is measured
 * @param x2 second end
 * @param y2 second end
 * @param offset distance of the dimension line from what is measured, to the left of the direction from first to second
 *     end in a picture whose y points down when above 0
 * @param label figure with tolerance
 * @param beyond whether it lies beyond its threshold
 * @param rightLimit right edge of the drawing, beyond which no label goes
 */
public record DimensionLine(
        double x1, double y1, double x2, double y2, double offset, String label, boolean beyond, double rightLimit) {

    private static final double ARROW_LENGTH = 7;
    private static final double ARROW_HALF_WIDTH = 1.7;
    private static final double EXTENSION_GAP = 2;
    private static final double EXTENSION_BEYOND = 3;
    private static final double OUTSIDE_TAIL = 13;
    private static final double LABEL_DISTANCE = 4;
    private static final double TEXT_HEIGHT = 9;
    private static final double TAIL_TO_LABEL = 3;

    /** Generous for the page's type at the largest size used. */
    private static final double UNITS_PER_CHARACTER = 6.6;

    /** Draws it; two ends at one place have no direction and are drawn as level. */
    public void draw(Svg svg) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        double ux = length > 0 ? (x2 - x1) / length : 1;
        double uy = length > 0 ? (y2 - y1) / length : 0;
        double nx = uy;
        double ny = -ux;
        double side = offset < 0 ? -1 : 1;
        svg.group(beyond ? "dimension beyond" : "dimension");
        extension(svg, x1, y1, nx * side, ny * side);
        extension(svg, x2, y2, nx * side, ny * side);
        double ax = x1 + nx * offset;
        double ay = y1 + ny * offset;
        double bx = x2 + nx * offset;
        double by = y2 + ny * offset;
        if (length >= 3 * ARROW_LENGTH) {
            svg.line(ax, ay, bx, by, "dimension-line");
            arrow(svg, ax, ay, -ux, -uy);
            arrow(svg, bx, by, ux, uy);
            labelBeside(svg, (ax + bx) / 2, (ay + by) / 2, nx * side, ny * side);
        } else {
            svg.line(ax - ux * OUTSIDE_TAIL, ay - uy * OUTSIDE_TAIL, ax, ay, "dimension-line");
            svg.line(bx, by, bx + ux * OUTSIDE_TAIL, by + uy * OUTSIDE_TAIL, "dimension-line");
            arrow(svg, ax, ay, ux, uy);
            arrow(svg, bx, by, -ux, -uy);
            labelAtTail(svg, ax, ay, bx, by, ux, uy);
        }
        svg.end();
    }

    private void extension(Svg svg, double x, double y, double nx, double ny) {
        double far = Math.abs(offset) + EXTENSION_BEYOND;
        if (far > EXTENSION_GAP + EXTENSION_BEYOND) {
            svg.line(x + nx * EXTENSION_GAP, y + ny * EXTENSION_GAP, x + nx * far, y + ny * far, "extension-line");
        }
    }

    /** A slim arrowhead with its tip at (x, y), pointing along (dx, dy). */
    private static void arrow(Svg svg, double x, double y, double dx, double dy) {
        double baseX = x - dx * ARROW_LENGTH;
        double baseY = y - dy * ARROW_LENGTH;
        double acrossX = -dy * ARROW_HALF_WIDTH;
        double acrossY = dx * ARROW_HALF_WIDTH;
        svg.polygon(
                List.of(new double[] {x, y}, new double[] {baseX + acrossX, baseY + acrossY}, new double[] {
                    baseX - acrossX, baseY - acrossY
                }),
                "arrowhead");
    }

    private void labelBeside(Svg svg, double x, double y, double nx, double ny) {
        String anchor = Math.abs(nx) < 0.35 ? "middle" : nx > 0 ? "start" : "end";
        double down = ny > 0 ? ny * TEXT_HEIGHT : 0;
        double level = Math.abs(ny) < 0.35 ? TEXT_HEIGHT / 3 : 0;
        svg.text(x + nx * LABEL_DISTANCE, y + ny * LABEL_DISTANCE + down + level, anchor, "dimension-label", label);
    }

    /** At the tail on the right, or on the left where the label would leave the drawing. */
    private void labelAtTail(Svg svg, double ax, double ay, double bx, double by, double ux, double uy) {
        double sign = ux >= 0 ? 1 : -1;
        double rightX = (sign > 0 ? bx : ax) + sign * ux * OUTSIDE_TAIL + TAIL_TO_LABEL;
        boolean room = rightX + label.length() * UNITS_PER_CHARACTER <= rightLimit;
        double side = room ? sign : -sign;
        double tailX = (side > 0 ? bx : ax) + side * ux * OUTSIDE_TAIL;
        double tailY = (side > 0 ? by : ay) + side * uy * OUTSIDE_TAIL;
        svg.text(
                tailX + (room ? TAIL_TO_LABEL : -TAIL_TO_LABEL),
                tailY + TEXT_HEIGHT / 3,
                room ? "start" : "end",
                "dimension-label",
                label);
    }
}
