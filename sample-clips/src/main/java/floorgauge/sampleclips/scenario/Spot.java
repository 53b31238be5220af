package floorgauge.sampleclips.scenario;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.sampleclips.input.LocatedValue;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A place in the half court as a coach names it, from the rim: {@code out} metres towards half court, {@code left} metres to
 * the left hand of an attacker who faces the rim.
 *
 * @param outMetres from the rim's centre, above 0 towards half court
 * @param leftMetres above 0 to the left of an attacker who faces the rim
 */
record Spot(double outMetres, double leftMetres) {

    /** How far outside the arc a shooter stands. */
    private static final double BEHIND_ARC = 0.35;

    FloorPoint onCourt(RuleSet rules, CourtEnd end) {
        FloorPoint rim = rules.rim(end);
        return new FloorPoint(rim.xMetres() - end.sign() * outMetres, end.sign() * leftMetres);
    }

    Spot mirrored() {
        return new Spot(outMetres, -leftMetres);
    }

    Spot plus(double out, double left) {
        return new Spot(outMetres + out, leftMetres + left);
    }

    static Set<String> names(RuleSet rules) {
        return named(rules).keySet();
    }

    /** The spots of a court by their names. */
    static Map<String, Spot> named(RuleSet rules) {
        Map<String, Spot> spots = new LinkedHashMap<>();
        double arc = rules.threePointRadiusMetres() + BEHIND_ARC;
        double lane = rules.laneWidthMetres() / 2;
        double freeThrow = rules.freeThrowLineMetres() - rules.rimFromEndLineMetres();
        spots.put("rim", new Spot(0.9, 0));
        spots.put("top", new Spot(arc, 0));
        spots.put("nail", new Spot(freeThrow, 0));
        spots.put("high post", new Spot(freeThrow, 0));
        spots.put("middle", new Spot(2.6, 0));
        spots.put("half court", new Spot(rules.lengthMetres() / 2 - rules.rimFromEndLineMetres() - 0.8, 0));
        double corner = rules.widthMetres() / 2 - rules.threePointStraightMetres() + 0.3;
        both(spots, "slot", polar(arc, 28));
        both(spots, "wing", polar(arc, 58));
        both(spots, "deep wing", polar(arc + 1.2, 50));
        both(spots, "corner", new Spot(-0.1, Math.min(corner, rules.widthMetres() / 2 - 0.4)));
        both(spots, "elbow", new Spot(freeThrow, lane));
        both(spots, "mid post", new Spot(2.6, lane + 0.3));
        both(spots, "block", new Spot(1.2, lane + 0.3));
        both(spots, "short corner", new Spot(-0.3, 4.2));
        both(spots, "dunker", new Spot(-0.2, 2.9));
        both(spots, "sideline", new Spot(arc - 1.5, rules.widthMetres() / 2 + 0.4));
        both(spots, "half court", new Spot(rules.lengthMetres() / 2 - rules.rimFromEndLineMetres() - 0.8, 3));
        return spots;
    }

    private static Spot polar(double radius, double degrees) {
        double angle = StrictMath.toRadians(degrees);
        return new Spot(radius * StrictMath.cos(angle), radius * StrictMath.sin(angle));
    }

    private static void both(Map<String, Spot> spots, String name, Spot left) {
        spots.put("left " + name, left);
        spots.put("right " + name, left.mirrored());
    }

    /** Reads a name or a pair {@code [out, left]}. */
    static Spot read(LocatedValue field, RuleSet rules) {
        double length = rules.lengthMetres();
        double width = rules.widthMetres();
        if (field.isList()) {
            var items = field.items();
            if (items.size() != 2) {
                throw field.error("expected two numbers, metres out from the rim and metres to the left");
            }
            return new Spot(
                    items.get(0).number(-rules.rimFromEndLineMetres() - 1, length),
                    items.get(1).number(-width / 2 - 1, width / 2 + 1));
        }
        Spot spot = named(rules).get(field.text().toLowerCase(Locale.ROOT));
        if (spot == null) {
            throw field.error("unknown spot '" + field.text() + "'; expected [out, left] or one of "
                    + String.join(", ", names(rules)));
        }
        return spot;
    }
}
