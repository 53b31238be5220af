package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;

/** The court's inside. */
final class CourtArea {

    private CourtArea() {}

    /** How far outside the lines a point lies, metres; 0 inside. */
    static double outsideBy(RuleSet rules, FloorPoint point) {
        double dx = Math.max(0, Math.abs(point.xMetres()) - rules.lengthMetres() / 2);
        double dy = Math.max(0, Math.abs(point.yMetres()) - rules.widthMetres() / 2);
        return Math.hypot(dx, dy);
    }
}
