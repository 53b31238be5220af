package floorgauge.court.rules;

import floorgauge.court.floor.FloorPoint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The named points of a court. Stand behind one side line and look at the court: that side line is near, the other far,
 * and the two ends are left and right. Either side line may be called near, as long as all points of a film keep to it.
 *
 * <p>In the court frame left is x below 0 and near is y below 0. Each point is the middle of the paint.
 */
public final class CourtPoints {

    /** How many letters a misspelt name may be away from a known one to be offered as a hint. */
    private static final int HINT_DISTANCE = 6;

    private final RuleSet rules;
    private final List<CourtPoint> points = new ArrayList<>();

    private CourtPoints(RuleSet rules) {
        this.rules = rules;
    }

    /** Every named point of a court, in order of name. */
    public static List<CourtPoint> of(RuleSet rules) {
        CourtPoints made = new CourtPoints(rules);
        made.addCentre();
        for (CourtEnd end : CourtEnd.values()) {
            made.addEnd(end);
        }
        made.points.sort(Comparator.comparing(CourtPoint::name));
        return List.copyOf(made.points);
    }

    /** The point of this name. */
    public static Optional<CourtPoint> named(RuleSet rules, String name) {
        return of(rules).stream().filter(p -> p.name().equals(name)).findFirst();
    }

    /** The known name that is fewest changes of a letter away from this one, if any is near. */
    public static Optional<String> nearestName(RuleSet rules, String name) {
        return nearest(of(rules).stream().map(CourtPoint::name).toList(), name);
    }

    static Optional<String> nearest(List<String> names, String name) {
        return names.stream()
                .min(Comparator.comparingInt((String known) -> changes(known, name))
                        .thenComparing(known -> known))
                .filter(known -> changes(known, name) <= HINT_DISTANCE);
    }

    private void addCentre() {
        double circle = rules.circleRadiusMetres() - rules.lineWidthMetres() / 2;
        add("centre", 0, 0, "middle of the centre line");
        add("centre-circle-left", -circle, 0, "leftmost point of the centre circle");
        add("centre-circle-right", circle, 0, "rightmost point of the centre circle");
        for (int side : new int[] {-1, 1}) {
            add(
                    "centre-circle-" + side(side),
                    0,
                    side * circle,
                    "centre circle meets the centre line, " + side(side) + " side");
            add(
                    "centre-line-" + side(side),
                    0,
                    side * sideLine(),
                    "centre line meets the " + side(side) + " side line");
        }
    }

    private void addEnd(CourtEnd end) {
        String name = end == CourtEnd.NEGATIVE_X ? "left" : "right";
        int s = end.sign();
        double w = rules.lineWidthMetres();
        double endLine = rules.lengthMetres() / 2 + w / 2;
        double freeThrow = rules.lengthMetres() / 2 - rules.freeThrowLineMetres() + w / 2;
        double rim = rules.lengthMetres() / 2 - rules.rimFromEndLineMetres();
        double arc = rules.threePointRadiusMetres() - w / 2;
        double straight = rules.widthMetres() / 2 - rules.threePointStraightMetres() - w / 2;
        double circle = rules.circleRadiusMetres() - w / 2;
        double lane = rules.laneWidthMetres() / 2 - w / 2;
        add(name + "-arc-top", s * (rim - arc), 0, "top of the " + name + " three-point arc");
        add(name + "-free-throw-middle", s * freeThrow, 0, "middle of the " + name + " free-throw line");
        add(name + "-circle-top", s * (freeThrow - circle), 0, "top of the " + name + " free-throw half circle");
        for (int side : new int[] {-1, 1}) {
            String where = ", " + side(side) + " side";
            add(
                    name + "-corner-" + side(side),
                    s * endLine,
                    side * sideLine(),
                    name + " end line meets the side line" + where);
            add(
                    name + "-end-arc-" + side(side),
                    s * endLine,
                    side * straight,
                    name + " end line meets the straight of the three-point line" + where);
            add(
                    name + "-end-lane-" + side(side),
                    s * endLine,
                    side * lane,
                    name + " end line meets the lane line" + where);
            add(
                    name + "-elbow-" + side(side),
                    s * freeThrow,
                    side * lane,
                    name + " free-throw line meets the lane line" + where);
            add(
                    name + "-arc-break-" + side(side),
                    s * (rim - Math.sqrt(Math.max(0, arc * arc - straight * straight))),
                    side * straight,
                    name + " three-point line turns from straight to arc" + where);
        }
    }

    private double sideLine() {
        return rules.widthMetres() / 2 + rules.lineWidthMetres() / 2;
    }

    private static String side(int sign) {
        return sign < 0 ? "near" : "far";
    }

    private void add(String name, double x, double y, String meaning) {
        points.add(new CourtPoint(name, new FloorPoint(x, y), meaning));
    }

    /** Levenshtein's distance (Soviet Physics Doklady 10, 1966). */
    private static int changes(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
