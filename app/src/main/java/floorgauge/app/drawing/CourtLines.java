package floorgauge.app.drawing;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;

/** The court's own lines on a plan, thin, with rim and board. */
final class CourtLines {

    private static final double RIM_RADIUS_METRES = 0.225;
    private static final double BOARD_HALF_WIDTH_METRES = 0.9;

    private CourtLines() {}

    static void draw(Svg svg, PlanFrame plan) {
        svg.group("court");
        for (PaintedLine line : plan.rules().paintedLines()) {
            if (line instanceof PaintedLine.Straight straight) {
                straight(svg, plan, straight);
            } else if (line instanceof PaintedLine.Arc arc) {
                arc(svg, plan, arc);
            }
        }
        basket(svg, plan);
        svg.end();
    }

    /** What lies off the plan is cut by the drawing's edge; lines wholly off it are left out. */
    private static void straight(Svg svg, PlanFrame plan, PaintedLine.Straight line) {
        double[] from = plan.at(line.from());
        double[] to = plan.at(line.to());
        if (Math.min(from[1], to[1]) <= plan.height() && Math.max(from[1], to[1]) >= 0) {
            svg.line(from[0], from[1], to[0], to[1], "court-line");
        }
    }

    /** In two pieces, since an SVG arc cannot close on itself. */
    private static void arc(Svg svg, PlanFrame plan, PaintedLine.Arc arc) {
        double radius = arc.radiusMetres() * plan.scale();
        if (plan.y(arc.centre()) - radius > plan.height()) {
            return;
        }
        for (int half = 0; half < 2; half++) {
            double[] from = plan.at(arc.at(half / 2.0));
            double[] to = plan.at(arc.at((half + 1) / 2.0));
            // Seen from above the turn from x towards y runs against the clock, which SVG counts as sweep 0.
            svg.arc(from[0], from[1], radius, false, arc.sweepRadians() < 0, to[0], to[1], "court-line");
        }
    }

    private static void basket(Svg svg, PlanFrame plan) {
        RuleSet rules = plan.rules();
        FloorPoint rim = rules.rim(plan.end());
        svg.circle(plan.x(rim), plan.y(rim), RIM_RADIUS_METRES * plan.scale(), "court-line");
        double board = plan.end().sign() * (rules.lengthMetres() / 2 - rules.boardFromEndLineMetres());
        double[] left = plan.at(new FloorPoint(board, -BOARD_HALF_WIDTH_METRES));
        double[] right = plan.at(new FloorPoint(board, BOARD_HALF_WIDTH_METRES));
        svg.line(left[0], left[1], right[0], right[1], "court-line board");
    }
}
