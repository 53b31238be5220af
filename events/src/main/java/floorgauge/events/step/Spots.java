package floorgauge.events.step;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The places of the half court that a coach has names for. Left and right are those of an attacker who faces the rim. Where a
 * place lies follows the court's lines; how far from the arc and the lane a player stands is common practice.
 */
public final class Spots {

    private static final double BEHIND_ARC_METRES = 0.4;
    private static final double BESIDE_LANE_METRES = 0.3;
    private static final double SLOT_DEGREES = 28;
    private static final double WING_DEGREES = 60;

    private final CourtEnd end;
    private final FloorPoint rim;
    private final Map<String, FloorPoint> spots = new LinkedHashMap<>();

    /**
     * @param rules the court
     * @param end the rim under attack
     */
    public Spots(RuleSet rules, CourtEnd end) {
        this.end = end;
        this.rim = rules.rim(end);
        double arc = rules.threePointRadiusMetres() + BEHIND_ARC_METRES;
        double lane = rules.laneWidthMetres() / 2;
        double line = rules.freeThrowLineMetres() - rules.rimFromEndLineMetres();
        put("rim", 0.8, 0);
        put("lane", line / 2 + 0.3, 0);
        put("nail", line, 0);
        put("top", arc, 0);
        double corner = rules.widthMetres() / 2 - rules.threePointStraightMetres() / 2;
        both("slot", arc * cos(SLOT_DEGREES), arc * sin(SLOT_DEGREES));
        both("wing", arc * cos(WING_DEGREES), arc * sin(WING_DEGREES));
        both("corner", 0, corner);
        both("elbow", line, lane);
        both("mid post", 2.6, lane + BESIDE_LANE_METRES);
        both("block", 1.0, lane + BESIDE_LANE_METRES);
        both("short corner", -0.4, (lane + corner) / 2 + 0.3);
        put("half court", rules.lengthMetres() / 2 - rules.rimFromEndLineMetres() - 1, 0);
    }

    /** The names of all places, as they may stand in a script. */
    public static List<String> names() {
        return List.copyOf(new Spots(RuleSet.fiba(), CourtEnd.POSITIVE_X).spots.keySet());
    }

    private static double cos(double degrees) {
        return StrictMath.cos(StrictMath.toRadians(degrees));
    }

    private static double sin(double degrees) {
        return StrictMath.sin(StrictMath.toRadians(degrees));
    }

    private void both(String name, double out, double aside) {
        put("left " + name, out, aside);
        put("right " + name, out, -aside);
    }

    private void put(String name, double out, double left) {
        spots.put(name, new FloorPoint(rim.xMetres() - end.sign() * out, end.sign() * left));
    }

    /** Where a named place is, court frame. */
    public Optional<FloorPoint> named(String name) {
        return Optional.ofNullable(spots.get(name));
    }

    /** The name of the place nearest to a point of the court frame. */
    public String nearest(FloorPoint point) {
        return spots.entrySet().stream()
                .min(Comparator.comparingDouble(e -> e.getValue().distanceTo(point)))
                .orElseThrow()
                .getKey();
    }

    /** Metres from the rim towards half court; below 0 behind the rim. */
    public double out(FloorPoint point) {
        return end.sign() * (rim.xMetres() - point.xMetres());
    }

    /** Metres to the left hand of an attacker who faces the rim; below 0 to the right. */
    public double left(FloorPoint point) {
        return end.sign() * point.yMetres();
    }
}
