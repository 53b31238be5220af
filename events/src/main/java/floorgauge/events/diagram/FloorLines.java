package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.PaintedLine;
import java.util.ArrayList;
import java.util.List;

/** The court's painted lines, the rim and the board, thin. */
final class FloorLines {

    private static final double WIDTH = 0.16;
    private static final double BOARD_WIDTH = 0.45;
    private static final int ARC_PIECES = 40;

    /** FIBA Official Basketball Rules, equipment: inner diameter of the ring at least 450 mm (from memory). */
    private static final double RIM_RADIUS_METRES = 0.225;

    /** The same: the board is 1.80 m wide (from memory). */
    private static final double BOARD_HALF_WIDTH_METRES = 0.9;

    private FloorLines() {}

    static void draw(SvgText svg, Page page) {
        svg.group("fg-floor", "opacity=\"0.55\"");
        for (PaintedLine line : page.rules().paintedLines()) {
            if (isShown(line, page)) {
                svg.line(points(line, page), WIDTH, "");
            }
        }
        svg.end();
        FloorPoint rim = page.rules().rim(page.end());
        List<double[]> ring = new ArrayList<>();
        for (int k = 0; k <= ARC_PIECES; k++) {
            double angle = 2 * Math.PI * k / ARC_PIECES;
            ring.add(page.at(new FloorPoint(
                    rim.xMetres() + RIM_RADIUS_METRES * Math.cos(angle),
                    rim.yMetres() + RIM_RADIUS_METRES * Math.sin(angle))));
        }
        svg.line(ring, 0.25, "");
        double board = page.end().sign()
                * (page.rules().lengthMetres() / 2 - page.rules().boardFromEndLineMetres());
        svg.line(
                List.of(
                        page.at(new FloorPoint(board, -BOARD_HALF_WIDTH_METRES)),
                        page.at(new FloorPoint(board, BOARD_HALF_WIDTH_METRES))),
                BOARD_WIDTH,
                "");
    }

    private static boolean isShown(PaintedLine line, Page page) {
        String other = page.end().sign() > 0 ? "negative-end-" : "positive-end-";
        return !line.name().startsWith(other);
    }

    private static List<double[]> points(PaintedLine line, Page page) {
        List<double[]> points = new ArrayList<>();
        if (line instanceof PaintedLine.Straight straight) {
            points.add(page.at(straight.from()));
            points.add(page.at(straight.to()));
        } else if (line instanceof PaintedLine.Arc arc) {
            for (int k = 0; k <= ARC_PIECES; k++) {
                points.add(page.at(arc.at(k / (double) ARC_PIECES)));
            }
        }
        return points;
    }
}
