package floorgauge.court.lines;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Joins ridge points into straight segments: from strong points outwards to neighbours of nearly the same direction, then
 * a line fitted through each region. A curve becomes a chain of chords.
 *
 * <p>Source of the growing: Grompone von Gioi, Jakubowicz, Morel and Randall, LSD: a fast line segment detector with a
 * false detection control (PAMI 32, 2010), section 3, here on ridge points instead of edges.
 */
public final class SegmentFinder {

    private static final double SAME_DIRECTION = Math.cos(Math.toRadians(12));
    private static final int REACH = 2;

    /** A third of a segment may lie this far to one side of it, in pixels; more is a bend. */
    private static final double STRAIGHT = 0.5;

    private final List<RidgePoint> points;
    private final int width;
    private final int height;
    private final int[] at;
    private final boolean[] taken;

    private SegmentFinder(List<RidgePoint> points, int width, int height) {
        this.points = points;
        this.width = width;
        this.height = height;
        this.at = new int[width * height];
        this.taken = new boolean[points.size()];
        for (int i = 0; i < points.size(); i++) {
            at[cell(points.get(i))] = i + 1;
        }
    }

    /** Ridge points that have company: those of regions of at least this many, the rest being grain and noise. */
    public static List<RidgePoint> inCompany(List<RidgePoint> points, int width, int height, int least) {
        SegmentFinder finder = new SegmentFinder(points, width, height);
        List<RidgePoint> kept = new ArrayList<>();
        for (int seed : finder.byStrength()) {
            if (!finder.taken[seed]) {
                List<RidgePoint> region = finder.grow(seed);
                if (region.size() >= least) {
                    kept.addAll(region);
                }
            }
        }
        return kept;
    }

    /**
     * @param points ridge points of a picture of this size
     * @param leastLength in pixels of that picture
     * @return segments, the longest first
     */
    public static List<LineSegment> find(List<RidgePoint> points, int width, int height, double leastLength) {
        return new SegmentFinder(points, width, height).segments(leastLength);
    }

    private int cell(RidgePoint p) {
        int column = (int) Math.max(0, Math.min(width - 1, Math.round(p.x())));
        int row = (int) Math.max(0, Math.min(height - 1, Math.round(p.y())));
        return row * width + column;
    }

    private List<Integer> byStrength() {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble((Integer i) -> -points.get(i).strength())
                .thenComparing(i -> i));
        return order;
    }

    private List<LineSegment> segments(double leastLength) {
        List<LineSegment> segments = new ArrayList<>();
        for (int seed : byStrength()) {
            if (!taken[seed]) {
                addStraight(grow(seed), leastLength, segments);
            }
        }
        segments.sort(Comparator.comparingDouble((LineSegment s) -> -s.length())
                .thenComparingDouble(LineSegment::x1)
                .thenComparingDouble(LineSegment::y1));
        return segments;
    }

    private List<RidgePoint> grow(int seed) {
        List<RidgePoint> region = new ArrayList<>();
        Deque<Integer> open = new ArrayDeque<>();
        open.add(seed);
        taken[seed] = true;
        // Twice the angle, so that a normal and its opposite are one direction.
        double cosine = 0;
        double sine = 0;
        while (!open.isEmpty()) {
            RidgePoint p = points.get(open.poll());
            region.add(p);
            cosine += p.normalX() * p.normalX() - p.normalY() * p.normalY();
            sine += 2 * p.normalX() * p.normalY();
            double angle = Math.atan2(sine, cosine) / 2;
            addNeighbours(p, Math.cos(angle), Math.sin(angle), open);
        }
        return region;
    }

    private void addNeighbours(RidgePoint p, double nx, double ny, Deque<Integer> open) {
        int column = (int) Math.round(p.x());
        int row = (int) Math.round(p.y());
        for (int y = Math.max(0, row - REACH); y <= Math.min(height - 1, row + REACH); y++) {
            for (int x = Math.max(0, column - REACH); x <= Math.min(width - 1, column + REACH); x++) {
                int index = at[y * width + x] - 1;
                if (index >= 0 && !taken[index]) {
                    RidgePoint q = points.get(index);
                    boolean along = Math.abs(nx * q.normalX() + ny * q.normalY()) >= SAME_DIRECTION;
                    boolean level = Math.abs((q.x() - p.x()) * nx + (q.y() - p.y()) * ny) <= 1.0;
                    if (along && level) {
                        taken[index] = true;
                        open.add(index);
                    }
                }
            }
        }
    }

    /** The region as one segment, or where it bends as the segments of its two halves. */
    private static void addStraight(List<RidgePoint> region, double leastLength, List<LineSegment> segments) {
        if (region.size() < 0.6 * leastLength || region.size() < 3) {
            return;
        }
        Axis axis = Axis.of(region);
        if (axis.length() < leastLength) {
            return;
        }
        if (axis.bend <= STRAIGHT) {
            if (region.size() >= 0.6 * axis.length()) {
                segments.add(axis.segment(region.size()));
            }
            return;
        }
        double middle = (axis.first + axis.last) / 2;
        addStraight(region.stream().filter(p -> axis.along(p) < middle).toList(), leastLength, segments);
        addStraight(region.stream().filter(p -> axis.along(p) >= middle).toList(), leastLength, segments);
    }

    /** The principal axis of a region. */
    private static final class Axis {
        private double mx;
        private double my;
        private double dx;
        private double dy;
        private double first;
        private double last;
        private double bend;

        static Axis of(List<RidgePoint> region) {
            Axis axis = new Axis();
            for (RidgePoint p : region) {
                axis.mx += p.x() / region.size();
                axis.my += p.y() / region.size();
            }
            double xx = 0;
            double xy = 0;
            double yy = 0;
            for (RidgePoint p : region) {
                xx += (p.x() - axis.mx) * (p.x() - axis.mx);
                xy += (p.x() - axis.mx) * (p.y() - axis.my);
                yy += (p.y() - axis.my) * (p.y() - axis.my);
            }
            double angle = Math.atan2(2 * xy, xx - yy) / 2;
            axis.dx = Math.cos(angle);
            axis.dy = Math.sin(angle);
            axis.measure(region);
            return axis;
        }

        /** Extent along, and how far the thirds of the region lie to one side: noise averages out, a bend does not. */
        private void measure(List<RidgePoint> region) {
            for (RidgePoint p : region) {
                first = Math.min(first, along(p));
                last = Math.max(last, along(p));
            }
            double[] sum = new double[3];
            int[] count = new int[3];
            for (RidgePoint p : region) {
                int third = (int) Math.max(0, Math.min(2, 3 * (along(p) - first) / (last - first)));
                sum[third] += (p.y() - my) * dx - (p.x() - mx) * dy;
                count[third]++;
            }
            for (int third = 0; third < 3; third++) {
                bend = count[third] > 0 ? Math.max(bend, Math.abs(sum[third] / count[third])) : bend;
            }
        }

        double along(RidgePoint p) {
            return (p.x() - mx) * dx + (p.y() - my) * dy;
        }

        double length() {
            return last - first;
        }

        LineSegment segment(int points) {
            return new LineSegment(mx + first * dx, my + first * dy, mx + last * dx, my + last * dy, points);
        }
    }
}
