package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import java.util.Collection;

/**
 * How the floor lies on the drawing: from above, the rim under attack at the top, not mirrored.
 *
 * @param rules the court
 * @param end the end at the top
 * @param leftMetres left edge, from the side line at the left of the page
 * @param topMetres upper edge, from the end line
 * @param heightMetres of the part shown
 * @param scale millimetres a metre
 */
record Page(RuleSet rules, CourtEnd end, double leftMetres, double topMetres, double heightMetres, double scale) {

    /** Width of every drawing, millimetres. */
    static final double WIDTH = 60;

    private static final double MARGIN_METRES = 0.45;
    private static final double LEAST_DEPTH_METRES = 10.2;
    private static final double ROOM_METRES = 1.0;
    private static final double LEAST_PART_METRES = 6.5;
    private static final double PART_HEIGHT_OVER_WIDTH = 0.92;

    /** The court's whole width, as deep as the places reach. */
    static Page half(RuleSet rules, CourtEnd end, Collection<FloorPoint> places) {
        double depth = LEAST_DEPTH_METRES;
        for (FloorPoint place : places) {
            depth = Math.max(depth, down(rules, end, place) + ROOM_METRES);
        }
        double most = rules.lengthMetres() / 2 + MARGIN_METRES;
        double height = Math.min(depth, Math.max(most, LEAST_DEPTH_METRES)) + MARGIN_METRES;
        double width = rules.widthMetres() + 2 * MARGIN_METRES;
        return new Page(rules, end, -MARGIN_METRES, -MARGIN_METRES, height, WIDTH / width);
    }

    /** The part of the floor that holds the places with room about them. */
    static Page around(RuleSet rules, CourtEnd end, Collection<FloorPoint> places) {
        if (places.isEmpty()) {
            return half(rules, end, places);
        }
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (FloorPoint place : places) {
            left = Math.min(left, across(rules, end, place));
            right = Math.max(right, across(rules, end, place));
            top = Math.min(top, down(rules, end, place));
            bottom = Math.max(bottom, down(rules, end, place));
        }
        double room = 2 * ROOM_METRES;
        double whole = rules.widthMetres() + 2 * MARGIN_METRES;
        double width = Math.min(whole, Math.max(LEAST_PART_METRES, Math.max(right - left, bottom - top) + room));
        double height = Math.max(width * PART_HEIGHT_OVER_WIDTH, bottom - top + room);
        return new Page(
                rules,
                end,
                within((left + right - width) / 2, rules.widthMetres() - width),
                within((top + bottom - height) / 2, rules.lengthMetres() - height),
                height,
                WIDTH / width);
    }

    private static double within(double edge, double farthest) {
        return Math.max(-MARGIN_METRES, Math.min(farthest + MARGIN_METRES, edge));
    }

    private static double across(RuleSet rules, CourtEnd end, FloorPoint p) {
        return rules.widthMetres() / 2 - end.sign() * p.yMetres();
    }

    private static double down(RuleSet rules, CourtEnd end, FloorPoint p) {
        return rules.lengthMetres() / 2 - end.sign() * p.xMetres();
    }

    double height() {
        return heightMetres * scale;
    }

    /** A place of the court frame on the drawing, {x, y} in millimetres. */
    double[] at(FloorPoint p) {
        return new double[] {(across(rules, end, p) - leftMetres) * scale, (down(rules, end, p) - topMetres) * scale};
    }

    /** The place of the court frame at a point of the drawing. */
    FloorPoint place(double[] at) {
        double across = at[0] / scale + leftMetres;
        double down = at[1] / scale + topMetres;
        return new FloorPoint(
                end.sign() * (rules.lengthMetres() / 2 - down), end.sign() * (rules.widthMetres() / 2 - across));
    }
}
