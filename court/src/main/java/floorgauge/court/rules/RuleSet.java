package floorgauge.court.rules;

import floorgauge.court.floor.FloorPoint;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The sizes of a court. Every figure is in metres and says which edge of the paint it speaks of.
 *
 * @param name lower case: {@code fiba}, {@code nba}, {@code ncaa}, {@code nfhs}, or the name of an odd gym
 * @param lengthMetres between the inner edges of the end lines
 * @param widthMetres between the inner edges of the side lines
 * @param lineWidthMetres width of the paint
 * @param laneWidthMetres between the outer edges of the lane lines
 * @param freeThrowLineMetres from the inner edge of the end line to the edge of the free-throw line farther from it
 * @param threePointRadiusMetres from the rim's centre to the outer edge of the arc
 * @param threePointStraightMetres from the inner edge of the side line to the outer edge of the straight part
 * @param rimFromEndLineMetres from the inner edge of the end line to the rim's centre
 * @param noChargeRadiusMetres from the rim's centre to the inner edge of the no-charge arc; empty where the book has none
 * @param circleRadiusMetres of the centre and free-throw circles, to the outer edge
 * @param boardFromEndLineMetres from the inner edge of the end line to the face of the board
 * @param rimHeightMetres rim above the floor
 * @param unpainted names of lines of {@link #paintedLines} that this floor lacks, or the beginning of such names: {@code
 *     negative-end} for a floor with one end alone
 */
public record RuleSet(
        String name,
        double lengthMetres,
        double widthMetres,
        double lineWidthMetres,
        double laneWidthMetres,
        double freeThrowLineMetres,
        double threePointRadiusMetres,
        double threePointStraightMetres,
        double rimFromEndLineMetres,
        OptionalDouble noChargeRadiusMetres,
        double circleRadiusMetres,
        double boardFromEndLineMetres,
        double rimHeightMetres,
        SortedSet<String> unpainted) {

    private static final double FOOT = 0.3048;
    private static final double INCH = 0.0254;

    public RuleSet {
        unpainted = Collections.unmodifiableSortedSet(new TreeSet<>(unpainted));
        for (double figure : new double[] {
            lengthMetres,
            widthMetres,
            lineWidthMetres,
            laneWidthMetres,
            freeThrowLineMetres,
            threePointRadiusMetres,
            threePointStraightMetres,
            rimFromEndLineMetres,
            circleRadiusMetres,
            boardFromEndLineMetres,
            rimHeightMetres
        }) {
            if (!(figure > 0 && Double.isFinite(figure))) {
                throw new IllegalArgumentException("every size of court " + name + " must be above 0: " + figure);
            }
        }
    }

    /** A court with all of its lines. */
    public RuleSet(
            String name,
            double lengthMetres,
            double widthMetres,
            double lineWidthMetres,
            double laneWidthMetres,
            double freeThrowLineMetres,
            double threePointRadiusMetres,
            double threePointStraightMetres,
            double rimFromEndLineMetres,
            OptionalDouble noChargeRadiusMetres,
            double circleRadiusMetres,
            double boardFromEndLineMetres,
            double rimHeightMetres) {
        this(
                name,
                lengthMetres,
                widthMetres,
                lineWidthMetres,
                laneWidthMetres,
                freeThrowLineMetres,
                threePointRadiusMetres,
                threePointStraightMetres,
                rimFromEndLineMetres,
                noChargeRadiusMetres,
                circleRadiusMetres,
                boardFromEndLineMetres,
                rimHeightMetres,
                new TreeSet<>());
    }

    /** FIBA Official Basketball Rules, article 2 (secondary sources; free-throw line quoted from 2.4.3). */
    public static RuleSet fiba() {
        return new RuleSet(
                "fiba",
                28, // 2.1 (secondary)
                15, // 2.1 (secondary)
                0.05, // 2.4 (secondary)
                4.90, // 2.4.3, outer edges (secondary)
                5.80, // 2.4.3, far edge (quoted)
                6.75, // 2.4.4, outer edge (secondary)
                0.90, // 2.4.4 (secondary)
                1.575, // (secondary)
                OptionalDouble.of(1.25), // (secondary)
                1.80, // outer edge (secondary)
                1.20, // board (memory)
                3.05);
    }

    /** NBA rule book, rule 1 (secondary sources; three-point line quoted from section I.d). */
    public static RuleSet nba() {
        return new RuleSet(
                "nba",
                94 * FOOT, // rule 1 (secondary)
                50 * FOOT, // rule 1 (secondary)
                2 * INCH, // rule 1 (secondary)
                16 * FOOT, // outer edges (secondary)
                19 * FOOT, // 15 ft from the board's face, which hangs 4 ft in (secondary)
                23.75 * FOOT, // section I.d (quoted)
                3 * FOOT, // section I.d (quoted)
                5.25 * FOOT, // (secondary)
                OptionalDouble.of(4 * FOOT), // (secondary)
                6 * FOOT, // (memory)
                4 * FOOT, // board (memory)
                10 * FOOT);
    }

    /** NCAA rules, rule 1 (secondary sources; line width and circle from memory). */
    public static RuleSet ncaa() {
        double radius = 22 * FOOT + 1.75 * INCH;
        return new RuleSet(
                "ncaa",
                94 * FOOT, // rule 1 (secondary)
                50 * FOOT, // rule 1 (secondary)
                2 * INCH, // (memory)
                12 * FOOT, // (secondary)
                19 * FOOT, // 15 ft from the board's face (secondary)
                radius, // 22 ft 1 3/4 in (secondary)
                25 * FOOT - (21 * FOOT + 7.875 * INCH), // straights 21 ft 7 7/8 in from the middle (memory)
                5.25 * FOOT, // (secondary)
                OptionalDouble.of(4 * FOOT), // (secondary)
                6 * FOOT, // (memory)
                4 * FOOT, // board (memory)
                10 * FOOT);
    }

    /** NFHS rules, rule 1 (arc quoted from 1-4; rim to end line from memory). */
    public static RuleSet nfhs() {
        double radius = 19.75 * FOOT;
        return new RuleSet(
                "nfhs",
                84 * FOOT, // rule 1 (secondary)
                50 * FOOT, // rule 1 (secondary)
                2 * INCH, // (quoted)
                12 * FOOT, // (secondary)
                19 * FOOT, // 15 ft from the board's face (secondary)
                radius, // 1-4, 19 ft 9 in to the outer edge (quoted)
                25 * FOOT - radius, // 1-4, straights at right angles to the end line (quoted)
                63 * INCH, // (memory)
                OptionalDouble.empty(), // none
                6 * FOOT, // (secondary)
                4 * FOOT, // board (memory)
                10 * FOOT);
    }

    /** The four rule books. */
    public static List<RuleSet> all() {
        return List.of(fiba(), nba(), ncaa(), nfhs());
    }

    /** The rule book of this name, in any case. */
    public static Optional<RuleSet> named(String name) {
        String wanted = name.toLowerCase(Locale.ROOT);
        return all().stream().filter(r -> r.name().equals(wanted)).findFirst();
    }

    /** The centre of the rim, straight down on the floor. */
    public FloorPoint rim(CourtEnd end) {
        return new FloorPoint(end.sign() * (lengthMetres / 2 - rimFromEndLineMetres), 0);
    }

    /** Every line that is painted, each as its centre line. */
    public List<PaintedLine> paintedLines() {
        List<PaintedLine> lines = new ArrayList<>();
        double w = lineWidthMetres;
        double x = lengthMetres / 2 + w / 2;
        double y = widthMetres / 2 + w / 2;
        lines.add(straight("side-line-negative", -x, -y, x, -y));
        lines.add(straight("side-line-positive", -x, y, x, y));
        lines.add(straight("centre-line", 0, -y, 0, y));
        lines.add(new PaintedLine.Arc(
                "centre-circle", new FloorPoint(0, 0), circleRadiusMetres - w / 2, 0, 2 * Math.PI, w));
        for (CourtEnd end : CourtEnd.values()) {
            addEnd(lines, end);
        }
        lines.removeIf(line -> unpainted.stream().anyMatch(line.name()::startsWith));
        return List.copyOf(lines);
    }

    /** Whether the painted court looks the same turned by 180 degrees. */
    public boolean isSymmetric() {
        return unpainted.stream()
                .noneMatch(name ->
                        name.startsWith("negative") || name.startsWith("positive") || name.startsWith("side-line-"));
    }

    private void addEnd(List<PaintedLine> lines, CourtEnd end) {
        double w = lineWidthMetres;
        int s = end.sign();
        String side = end == CourtEnd.NEGATIVE_X ? "negative-end-" : "positive-end-";
        double endLine = s * (lengthMetres / 2 + w / 2);
        double inner = s * lengthMetres / 2;
        double y = widthMetres / 2 + w / 2;
        double lane = laneWidthMetres / 2 - w / 2;
        double freeThrow = inner - s * (freeThrowLineMetres - w / 2);
        lines.add(straight(side + "end-line", endLine, -y, endLine, y));
        lines.add(straight(side + "lane-line-negative", inner, -lane, freeThrow, -lane));
        lines.add(straight(side + "lane-line-positive", inner, lane, freeThrow, lane));
        lines.add(straight(side + "free-throw-line", freeThrow, -lane, freeThrow, lane));
        double towardsCentre = s > 0 ? Math.PI : 0;
        lines.add(new PaintedLine.Arc(
                side + "free-throw-circle",
                new FloorPoint(freeThrow, 0),
                circleRadiusMetres - w / 2,
                towardsCentre - Math.PI / 2,
                Math.PI,
                w));
        FloorPoint rim = rim(end);
        double radius = threePointRadiusMetres - w / 2;
        double straightY = widthMetres / 2 - threePointStraightMetres - w / 2;
        double half = Math.asin(Math.min(1, straightY / radius));
        double breakX = rim.xMetres() - s * radius * Math.cos(half);
        lines.add(new PaintedLine.Arc(side + "three-point-arc", rim, radius, towardsCentre - half, 2 * half, w));
        lines.add(straight(side + "three-point-straight-negative", inner, -straightY, breakX, -straightY));
        lines.add(straight(side + "three-point-straight-positive", inner, straightY, breakX, straightY));
        if (noChargeRadiusMetres.isPresent()) {
            lines.add(new PaintedLine.Arc(
                    side + "no-charge-arc",
                    rim,
                    noChargeRadiusMetres.getAsDouble() + w / 2,
                    towardsCentre - Math.PI / 2,
                    Math.PI,
                    w));
        }
    }

    private PaintedLine straight(String name, double x1, double y1, double x2, double y2) {
        return new PaintedLine.Straight(name, new FloorPoint(x1, y1), new FloorPoint(x2, y2), lineWidthMetres);
    }
}
