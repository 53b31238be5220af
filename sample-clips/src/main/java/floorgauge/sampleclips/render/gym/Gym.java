package floorgauge.sampleclips.render.gym;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import floorgauge.sampleclips.render.value.Hash;
import java.util.ArrayList;
import java.util.List;

/**
 * What a gym is made of.
 *
 * @param rules court in use
 * @param layers paint, later over earlier; the court in use comes last
 * @param halfLengthMetres room from its middle to an end wall
 * @param halfWidthMetres room from its middle to a side wall
 * @param ceilingMetres height of the room
 * @param woodRgb bare floor
 * @param dadoRgb lower walls
 * @param wallRgb upper walls
 * @param padRgb pads on the end walls
 * @param gloss 0 matt to 1 freshly varnished
 * @param windows daylight through a band of windows on the far side wall
 * @param seed of every random detail
 */
public record Gym(
        RuleSet rules,
        List<LineLayer> layers,
        double halfLengthMetres,
        double halfWidthMetres,
        double ceilingMetres,
        int woodRgb,
        int dadoRgb,
        int wallRgb,
        int padRgb,
        double gloss,
        boolean windows,
        long seed) {

    private static final int[] WOODS = {0xD9B27C, 0xCFA46B, 0xE0BC8A, 0xC99A60};
    private static final int[] DADOS = {0x3D5A73, 0x6B4A34, 0x4F6B52, 0x8A8F94, 0x7A2E2E};
    private static final int[] WALLS = {0xD8D3C6, 0xC7CDD1, 0xDCCFAF, 0xCBC4B8};
    private static final int[] PADS = {0x22406B, 0x7A1F25, 0x2B2E33, 0x1F5B3A};

    public Gym {
        layers = List.copyOf(layers);
    }

    /** A hall whose floor carries this court alone, freshly painted. */
    public static Gym clean(RuleSet rules, long seed) {
        return of(rules, List.of(new LineLayer("basketball", rules.paintedLines(), 0xF4F2EC, 0)), seed);
    }

    /** A school hall: volleyball, badminton and handball lines under those of the court, some paint rubbed off. */
    public static Gym school(RuleSet rules, double wear, long seed) {
        List<LineLayer> layers = new ArrayList<>();
        layers.add(new LineLayer("badminton", badminton(), 0x2F8F4E, wear));
        layers.add(new LineLayer("handball", handball(), 0xD9A520, wear));
        layers.add(new LineLayer("volleyball", rectangle("volleyball", 18, 9, 0.05, true), 0x2456B5, wear));
        layers.add(new LineLayer("basketball", rules.paintedLines(), 0xF4F2EC, wear));
        return of(rules, layers, seed);
    }

    private static Gym of(RuleSet rules, List<LineLayer> layers, long seed) {
        return new Gym(
                rules,
                layers,
                rules.lengthMetres() / 2 + 3.5 + 2 * Hash.unit(seed, 1, 0),
                rules.widthMetres() / 2 + 5.5 + 2 * Hash.unit(seed, 2, 0),
                8.5 + 2 * Hash.unit(seed, 3, 0),
                pick(WOODS, seed, 4),
                pick(DADOS, seed, 5),
                pick(WALLS, seed, 6),
                pick(PADS, seed, 7),
                0.6 + 0.3 * Hash.unit(seed, 8, 0),
                Hash.unit(seed, 9, 0) < 0.5,
                seed);
    }

    private static int pick(int[] from, long seed, int what) {
        return from[(int) (Hash.unit(seed, what, 0) * from.length)];
    }

    /** A rectangle centred on the court, with lines 3 m either side of the middle for volleyball. */
    private static List<PaintedLine> rectangle(
            String name, double length, double width, double paint, boolean attackLines) {
        double x = length / 2 - paint / 2;
        double y = width / 2 - paint / 2;
        List<PaintedLine> out = new ArrayList<>();
        out.add(straight(name + "-side-1", -x, -y, x, -y, paint));
        out.add(straight(name + "-side-2", -x, y, x, y, paint));
        out.add(straight(name + "-end-1", -x, -y, -x, y, paint));
        out.add(straight(name + "-end-2", x, -y, x, y, paint));
        if (attackLines) {
            out.add(straight(name + "-middle", 0, -y, 0, y, paint));
            out.add(straight(name + "-attack-1", -3, -y, -3, y, paint));
            out.add(straight(name + "-attack-2", 3, -y, 3, y, paint));
        }
        return out;
    }

    /** Two badminton courts, 13.40 x 6.10 m with 4 cm paint, across the hall (sizes from memory). */
    private static List<PaintedLine> badminton() {
        List<PaintedLine> out = new ArrayList<>();
        for (double centre : new double[] {-7, 7}) {
            String name = centre < 0 ? "badminton-1" : "badminton-2";
            for (double x : new double[] {-3.03, -2.57, 2.57, 3.03}) {
                out.add(straight(name + "-long" + x, centre + x, -6.68, centre + x, 6.68, 0.04));
            }
            for (double y : new double[] {-6.68, -5.92, -1.98, 1.98, 5.92, 6.68}) {
                out.add(straight(name + "-cross" + y, centre - 3.03, y, centre + 3.03, y, 0.04));
            }
            out.add(straight(name + "-centre-1", centre, -6.68, centre, -1.98, 0.04));
            out.add(straight(name + "-centre-2", centre, 1.98, centre, 6.68, 0.04));
        }
        return out;
    }

    /** The 6 m goal areas of handball at both ends of a hall 30 m long (sizes from memory). */
    private static List<PaintedLine> handball() {
        List<PaintedLine> out = new ArrayList<>();
        for (int sign : new int[] {-1, 1}) {
            double goal = sign * 15.0;
            String name = sign < 0 ? "handball-1" : "handball-2";
            out.add(straight(name + "-front", goal - sign * 6, -1.5, goal - sign * 6, 1.5, 0.05));
            for (int side : new int[] {-1, 1}) {
                double start = sign > 0 ? Math.PI : 0;
                double sweep = sign > 0 ? -side * Math.PI / 2 : side * Math.PI / 2;
                out.add(new PaintedLine.Arc(
                        name + "-arc" + side, new FloorPoint(goal, side * 1.5), 6, start, sweep, 0.05));
            }
        }
        return out;
    }

    private static PaintedLine straight(String name, double x1, double y1, double x2, double y2, double width) {
        return new PaintedLine.Straight(name, new FloorPoint(x1, y1), new FloorPoint(x2, y2), width);
    }
}
