package floorgauge.app.drawing;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;

/**
 * How the floor lies on the page: seen from above, the rim under attack at the top, not mirrored. Twenty units a metre.
 *
 * @param rules the court
 * @param end the end at the top
 * @param farthestMetres how far from the end line under attack the plan reaches, metres
 */
public record PlanFrame(RuleSet rules, CourtEnd end, double farthestMetres) {

    /** Units of the drawing in a metre. */
    public static final double UNITS_PER_METRE = 20;

    private static final double MARGIN = 14;

    public PlanFrame {
        if (!(farthestMetres > 0)) {
            throw new IllegalArgumentException("a plan has a length: " + farthestMetres);
        }
    }

    /** Half the court. */
    public static PlanFrame half(RuleSet rules, CourtEnd end) {
        return new PlanFrame(rules, end, rules.lengthMetres() / 2);
    }

    double width() {
        return rules.widthMetres() * UNITS_PER_METRE + 2 * MARGIN;
    }

    double height() {
        return farthestMetres * UNITS_PER_METRE + 2 * MARGIN;
    }

    /** Right on the page. */
    double x(FloorPoint point) {
        return MARGIN + (rules.widthMetres() / 2 - end.sign() * point.yMetres()) * UNITS_PER_METRE;
    }

    /** Down on the page. */
    double y(FloorPoint point) {
        return MARGIN + (rules.lengthMetres() / 2 - end.sign() * point.xMetres()) * UNITS_PER_METRE;
    }

    double[] at(FloorPoint point) {
        return new double[] {x(point), y(point)};
    }

    /** Whether the point lies on the plan. */
    boolean holds(FloorPoint point) {
        return x(point) >= 0 && x(point) <= width() && y(point) >= 0 && y(point) <= height();
    }
}
