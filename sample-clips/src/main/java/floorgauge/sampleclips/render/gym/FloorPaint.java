package floorgauge.sampleclips.render.gym;

import floorgauge.court.rules.PaintedLine;
import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Hash;
import java.util.ArrayList;
import java.util.List;

/**
 * The paint on a floor, filtered over a pixel's footprint: for each line near a floor point, the share of the footprint,
 * seen as a box across the line, that the paint covers.
 */
public final class FloorPaint {

    private static final double CELL_METRES = 0.25;
    private static final double REACH_METRES = 0.35;
    private static final int[] NONE = {};

    private final List<PaintedLine> lines = new ArrayList<>();
    private final List<float[]> colours = new ArrayList<>();
    private final List<Double> wear = new ArrayList<>();
    private final int[][] cells;
    private final int columns;
    private final int rows;
    private final double originX;
    private final double originY;
    private final long seed;

    /**
     * @param layers painted in this order, later over earlier
     * @param halfLength how far the paint's map reaches from the centre along x, metres
     * @param halfWidth the same along y
     */
    public FloorPaint(List<LineLayer> layers, double halfLength, double halfWidth, long seed) {
        this.seed = seed;
        for (LineLayer layer : layers) {
            for (PaintedLine line : layer.lines()) {
                lines.add(line);
                colours.add(Colour.linear(layer.rgb()));
                wear.add(layer.wear());
            }
        }
        columns = (int) Math.ceil(2 * halfLength / CELL_METRES);
        rows = (int) Math.ceil(2 * halfWidth / CELL_METRES);
        originX = -halfLength;
        originY = -halfWidth;
        cells = new int[columns * rows][];
        for (int cell = 0; cell < cells.length; cell++) {
            cells[cell] = near(cell);
        }
    }

    private int[] near(int cell) {
        double x = originX + (cell % columns + 0.5) * CELL_METRES;
        double y = originY + (cell / columns + 0.5) * CELL_METRES;
        double reach = REACH_METRES + CELL_METRES * Math.sqrt(0.5);
        int[] found = new int[lines.size()];
        int count = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (distance(lines.get(i), x, y) < reach + lines.get(i).widthMetres()) {
                found[count++] = i;
            }
        }
        return count == 0 ? NONE : java.util.Arrays.copyOf(found, count);
    }

    private static double distance(PaintedLine line, double x, double y) {
        if (line instanceof PaintedLine.Straight s) {
            double dx = s.to().xMetres() - s.from().xMetres();
            double dy = s.to().yMetres() - s.from().yMetres();
            double px = x - s.from().xMetres();
            double py = y - s.from().yMetres();
            double f = Math.max(0, Math.min(1, (px * dx + py * dy) / (dx * dx + dy * dy)));
            return Math.hypot(px - f * dx, py - f * dy);
        }
        PaintedLine.Arc arc = (PaintedLine.Arc) line;
        return Math.abs(Math.hypot(x - arc.centre().xMetres(), y - arc.centre().yMetres()) - arc.radiusMetres());
    }

    /**
     * Lays the paint over a colour.
     *
     * @param ux floor metres along x for one pixel to the right
     * @param uy floor metres along y for one pixel to the right
     * @param vx floor metres along x for one pixel down
     * @param vy floor metres along y for one pixel down
     * @param rgb linear light of the bare floor; receives the painted one
     */
    public void paint(double x, double y, double ux, double uy, double vx, double vy, float[] rgb) {
        int column = (int) ((x - originX) / CELL_METRES);
        int row = (int) ((y - originY) / CELL_METRES);
        if (x < originX || y < originY || column >= columns || row >= rows) {
            return;
        }
        for (int i : cells[row * columns + column]) {
            PaintedLine line = lines.get(i);
            double cover = line instanceof PaintedLine.Straight s
                    ? straight(s, x, y, ux, uy, vx, vy)
                    : arc((PaintedLine.Arc) line, x, y, ux, uy, vx, vy);
            if (cover > 0) {
                float share = (float) (cover * (1 - worn(i, x, y)));
                float[] colour = colours.get(i);
                for (int c = 0; c < 3; c++) {
                    rgb[c] += share * (colour[c] - rgb[c]);
                }
            }
        }
    }

    private double worn(int line, double x, double y) {
        double amount = wear.get(line);
        if (amount == 0) {
            return 0;
        }
        double blotch = 0.5 + 0.35 * Hash.noise(seed, x * 1.3, y * 1.3) + 0.3 * Hash.noise(seed + 1, x * 9, y * 9);
        return Math.max(0, Math.min(0.95, amount * 1.2 * (blotch - 0.35) + amount * 0.3));
    }

    /** A rectangle that reaches half a width beyond both ends of its centre line, so that corners are full. */
    private static double straight(
            PaintedLine.Straight s, double x, double y, double ux, double uy, double vx, double vy) {
        double dx = s.to().xMetres() - s.from().xMetres();
        double dy = s.to().yMetres() - s.from().yMetres();
        double length = Math.sqrt(dx * dx + dy * dy);
        dx /= length;
        dy /= length;
        double px = x - s.from().xMetres();
        double py = y - s.from().yMetres();
        double half = s.widthMetres() / 2;
        double across = covered(-dy * px + dx * py, -half, half, reach(-dy, dx, ux, uy, vx, vy));
        if (across == 0) {
            return 0;
        }
        return across * covered(dx * px + dy * py, -half, length + half, reach(dx, dy, ux, uy, vx, vy));
    }

    private static double arc(PaintedLine.Arc a, double x, double y, double ux, double uy, double vx, double vy) {
        double px = x - a.centre().xMetres();
        double py = y - a.centre().yMetres();
        double r = Math.sqrt(px * px + py * py);
        double half = a.widthMetres() / 2;
        if (Math.abs(r - a.radiusMetres()) > half + REACH_METRES) {
            return 0;
        }
        double nx = px / r;
        double ny = py / r;
        double across = covered(r - a.radiusMetres(), -half, half, reach(nx, ny, ux, uy, vx, vy));
        if (across == 0 || Math.abs(a.sweepRadians()) >= 2 * Math.PI - 1e-9) {
            return across;
        }
        double middle = a.startRadians() + a.sweepRadians() / 2;
        double off = Math.IEEEremainder(Math.atan2(py, px) - middle, 2 * Math.PI);
        double end = Math.abs(a.sweepRadians()) / 2 * a.radiusMetres();
        return across * covered(off * a.radiusMetres(), -end, end, reach(-ny, nx, ux, uy, vx, vy));
    }

    /** Half the width, along a unit direction, of a box with the spread of the pixel's footprint. */
    private static double reach(double nx, double ny, double ux, double uy, double vx, double vy) {
        double u = nx * ux + ny * uy;
        double v = nx * vx + ny * vy;
        return Math.max(1e-6, 0.5 * Math.sqrt(u * u + v * v));
    }

    /** Share of the box t - h to t + h that lies in from to to. */
    private static double covered(double t, double from, double to, double h) {
        double overlap = Math.min(t + h, to) - Math.max(t - h, from);
        return overlap <= 0 ? 0 : Math.min(1, overlap / (2 * h));
    }
}
