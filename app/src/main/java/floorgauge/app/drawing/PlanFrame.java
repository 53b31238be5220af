package floorgauge.app.drawing;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import java.util.Collection;

/**
 * How a part of the floor lies on the page: seen from above, the rim under attack at the top, not mirrored. The part is
 * measured from the corner of the court at the upper left of the page.
 *
 * @param rules the court
 * @param end the end at the top
 * @param leftMetres left edge; below 0 shows floor beyond the side line
 * @param topMetres upper edge; below 0 shows floor beyond the end line
 * @param widthMetres above 0
 * @param heightMetres above 0
 */
record PlanFrame(
        RuleSet rules, CourtEnd end, double leftMetres, double topMetres, double widthMetres, double heightMetres) {

    /** Every plan is as wide as this, so that marks and letters have one size on all of them. */
    private static final double WIDTH = 328;

    /** Floor shown beyond the lines. */
    private static final double MARGIN_METRES = 0.7;

    /** A part is at least so wide that it shows where on the floor it is. */
    private static final double LEAST_WIDTH_METRES = 7;

    /** Room about the places that a part must show. */
    private static final double ROOM_METRES = 1.3;

    private static final double PART_HEIGHT_OVER_WIDTH = 0.9;

    PlanFrame {
        if (!(widthMetres > 0 && heightMetres > 0)) {
            throw new IllegalArgumentException("a plan has a size: " + widthMetres + " x " + heightMetres);
        }
    }

    /** The whole width of the court from the end line under attack to half court, or as far as the places reach. */
    static PlanFrame half(RuleSet rules, CourtEnd end, Collection<FloorPoint> places) {
        double depth = rules.lengthMetres() / 2;
        for (FloorPoint place : places) {
            depth = Math.max(depth, down(rules, end, place));
        }
        return new PlanFrame(
                rules,
                end,
                -MARGIN_METRES,
                -MARGIN_METRES,
                rules.widthMetres() + 2 * MARGIN_METRES,
                Math.min(depth, rules.lengthMetres()) + 2 * MARGIN_METRES);
    }

    /** The part of the floor that holds all places with room about them; half the court where there is none. */
    static PlanFrame around(RuleSet rules, CourtEnd end, Collection<FloorPoint> places) {
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
        double wanted = Math.max(right - left, (bottom - top) / PART_HEIGHT_OVER_WIDTH) + 2 * ROOM_METRES;
        double width = Math.min(Math.max(LEAST_WIDTH_METRES, wanted), rules.widthMetres() + 2 * MARGIN_METRES);
        double height = Math.max(width * PART_HEIGHT_OVER_WIDTH, bottom - top + 2 * ROOM_METRES);
        return new PlanFrame(
                rules,
                end,
                within((left + right - width) / 2, rules.widthMetres() - width),
                within((top + bottom - height) / 2, rules.lengthMetres() - height),
                width,
                height);
    }

    private static double within(double edge, double farthest) {
        return Math.max(-MARGIN_METRES, Math.min(farthest + MARGIN_METRES, edge));
    }

    private static double across(RuleSet rules, CourtEnd end, FloorPoint point) {
        return rules.widthMetres() / 2 - end.sign() * point.yMetres();
    }

    private static double down(RuleSet rules, CourtEnd end, FloorPoint point) {
        return rules.lengthMetres() / 2 - end.sign() * point.xMetres();
    }

    /** Units of the drawing in a metre. */
    double scale() {
        return WIDTH / widthMetres;
    }

    double width() {
        return WIDTH;
    }

    double height() {
        return heightMetres * scale();
    }

    /** Right on the page. */
    double x(FloorPoint point) {
        return (across(rules, end, point) - leftMetres) * scale();
    }

    /** Down on the page. */
    double y(FloorPoint point) {
        return (down(rules, end, point) - topMetres) * scale();
    }

    double[] at(FloorPoint point) {
        return new double[] {x(point), y(point)};
    }
}
