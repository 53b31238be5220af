package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Where on the floor a calibration rests on evidence, apart from how small its residual is: the convex hull of the floor
 * points at which paint (or a named point) was found, and a margin about it.
 *
 * @param hull corners of the hull in order of the turn from x towards y; fewer than three where there is no area
 * @param marginMetres how far beyond the hull the calibration is still carried, at least 0
 */
public record Coverage(List<FloorPoint> hull, double marginMetres) {

    public Coverage {
        hull = List.copyOf(hull);
        if (!(marginMetres >= 0)) {
            throw new IllegalArgumentException("margin must be at least 0: " + marginMetres);
        }
    }

    /** Carries nothing. */
    public static Coverage none() {
        return new Coverage(List.of(), 0);
    }

    /** Carries the hull of these points and a margin. */
    public static Coverage around(List<FloorPoint> points, double marginMetres) {
        return new Coverage(convexHull(points), marginMetres);
    }

    /** Whether the point lies in the hull or within the margin of it. */
    public boolean holds(FloorPoint point) {
        if (hull.size() < 3) {
            return false;
        }
        boolean inside = true;
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < hull.size(); i++) {
            FloorPoint a = hull.get(i);
            FloorPoint b = hull.get((i + 1) % hull.size());
            inside &= cross(a, b, point) >= 0;
            nearest = Math.min(nearest, distanceToSegment(point, a, b));
        }
        return inside || nearest <= marginMetres;
    }

    /** Area of the hull in square metres. */
    public double areaSquareMetres() {
        double doubled = 0;
        for (int i = 0; i < hull.size(); i++) {
            FloorPoint a = hull.get(i);
            FloorPoint b = hull.get((i + 1) % hull.size());
            doubled += a.xMetres() * b.yMetres() - b.xMetres() * a.yMetres();
        }
        return doubled / 2;
    }

    /** Andrew's monotone chain (Information Processing Letters 9, 1979). */
    private static List<FloorPoint> convexHull(List<FloorPoint> points) {
        List<FloorPoint> sorted = points.stream()
                .distinct()
                .sorted(Comparator.comparingDouble(FloorPoint::xMetres).thenComparingDouble(FloorPoint::yMetres))
                .toList();
        if (sorted.size() < 3) {
            return sorted;
        }
        List<FloorPoint> chain = new ArrayList<>();
        addHalf(chain, sorted, 0);
        int lower = chain.size();
        List<FloorPoint> reversed = new ArrayList<>(sorted);
        java.util.Collections.reverse(reversed);
        addHalf(chain, reversed.subList(1, reversed.size()), lower - 1);
        chain.remove(chain.size() - 1);
        return chain;
    }

    private static void addHalf(List<FloorPoint> chain, List<FloorPoint> sorted, int floor) {
        for (FloorPoint p : sorted) {
            while (chain.size() >= floor + 2
                    && cross(chain.get(chain.size() - 2), chain.get(chain.size() - 1), p) <= 0) {
                chain.remove(chain.size() - 1);
            }
            chain.add(p);
        }
    }

    private static double cross(FloorPoint a, FloorPoint b, FloorPoint c) {
        return (b.xMetres() - a.xMetres()) * (c.yMetres() - a.yMetres())
                - (b.yMetres() - a.yMetres()) * (c.xMetres() - a.xMetres());
    }

    private static double distanceToSegment(FloorPoint p, FloorPoint a, FloorPoint b) {
        double dx = b.xMetres() - a.xMetres();
        double dy = b.yMetres() - a.yMetres();
        double along = ((p.xMetres() - a.xMetres()) * dx + (p.yMetres() - a.yMetres()) * dy) / (dx * dx + dy * dy);
        double t = Math.max(0, Math.min(1, along));
        return p.distanceTo(new FloorPoint(a.xMetres() + t * dx, a.yMetres() + t * dy));
    }
}
