package floorgauge.court.calibration;

import floorgauge.court.lines.LineSegment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The floor with its two directions made square, but its two scales and offsets still open: {@code along = (B p) / (h p)},
 * {@code across = (A p) / (h p)}, where {@code A} and {@code B} are lines through the first and second vanishing point and
 * {@code h} is the horizon. Lines to the first vanishing point have one value across, lines to the second one value along.
 *
 * <p>Source: Hartley and Zisserman, Multiple View Geometry (2nd edition, 2004), section 2.7 (affine rectification).
 */
final class FloorGrid {

    private static final int MOST_LINES = 18;

    private final int width;
    private final int height;
    private final double unit;
    private final double[] lineA;
    private final double[] lineB;
    private final double[] horizon;

    /** A line of one family: its value, how far the value may be off, and how many pixels of segments it has. */
    record GridLine(double value, double tolerance, double pixels) {}

    FloorGrid(VanishingPair pair, int width, int height) {
        this.width = width;
        this.height = height;
        this.unit = Math.hypot(width, height) / 2;
        double[] a = {pair.first().x(), pair.first().y(), pair.first().w()};
        double[] b = {pair.second().x(), pair.second().y(), pair.second().w()};
        double[] foot = {0, 0.5 * height / unit, 1};
        this.lineA = unit(cross(a, foot));
        this.lineB = unit(cross(b, foot));
        double[] h = unit(cross(a, b));
        double sign = Math.signum(dot(h, foot));
        this.horizon = new double[] {sign * h[0], sign * h[1], sign * h[2]};
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] unit(double[] a) {
        double length = Math.sqrt(dot(a, a));
        return new double[] {a[0] / length, a[1] / length, a[2] / length};
    }

    /** From pixels to (along, across), up to the two scales and offsets. */
    Homography pixelsToGrid() {
        return Homography.of(
                        lineB[0], lineB[1], lineB[2], lineA[0], lineA[1], lineA[2], horizon[0], horizon[1], horizon[2])
                .after(Homography.similarity(1 / unit, (width - 1) / 2.0, (height - 1) / 2.0));
    }

    /** Lines of the family that runs along (one value across), or of the other; those with most pixels first. */
    List<GridLine> lines(List<LineSegment> segments, boolean along) {
        List<GridLine> single = new ArrayList<>();
        for (LineSegment segment : segments) {
            GridLine line = gridLine(segment, along);
            if (line != null) {
                single.add(line);
            }
        }
        single.sort(Comparator.comparingDouble((GridLine l) -> -l.pixels).thenComparingDouble(GridLine::value));
        List<GridLine> merged = new ArrayList<>();
        boolean[] taken = new boolean[single.size()];
        for (int i = 0; i < taken.length; i++) {
            if (!taken[i]) {
                merged.add(merge(single, taken, i));
            }
        }
        merged.sort(Comparator.comparingDouble((GridLine l) -> -l.pixels).thenComparingDouble(GridLine::value));
        return merged.subList(0, Math.min(MOST_LINES, merged.size()));
    }

    private static GridLine merge(List<GridLine> single, boolean[] taken, int seed) {
        GridLine first = single.get(seed);
        double value = 0;
        double weight = 0;
        double pixels = 0;
        for (int j = seed; j < taken.length; j++) {
            GridLine other = single.get(j);
            if (!taken[j] && Math.abs(other.value - first.value) <= first.tolerance + other.tolerance) {
                taken[j] = true;
                double w = other.pixels / (other.tolerance * other.tolerance);
                value += w * other.value;
                weight += w;
                pixels += other.pixels;
            }
        }
        return new GridLine(value / weight, first.tolerance, pixels);
    }

    private GridLine gridLine(LineSegment s, boolean along) {
        double x = (s.middleX() - (width - 1) / 2.0) / unit;
        double y = (s.middleY() - (height - 1) / 2.0) / unit;
        double[] p = {x, y, 1};
        double below = dot(horizon, p);
        if (!(below > 0.02)) {
            return null;
        }
        double[] line = along ? lineA : lineB;
        double value = dot(line, p) / below;
        // Gradient of the value: at right angles to the lines of its family.
        double gx = (line[0] - value * horizon[0]) / below;
        double gy = (line[1] - value * horizon[1]) / below;
        double gradient = Math.hypot(gx, gy);
        double length = s.length();
        double off = Math.abs(gx * (s.x2() - s.x1()) + gy * (s.y2() - s.y1())) / (gradient * length);
        if (off > Math.min(0.08, 0.015 + 2.0 / length)) {
            return null;
        }
        return new GridLine(value, gradient * 1.5 / unit, length);
    }
}
