package floorgauge.events.diagram;

import java.util.ArrayList;
import java.util.List;

/** Open lines as points {x, y}: lengths, pieces, distances, simpler and smoother versions. All methods leave their input as it is. */
final class Polyline {

    private Polyline() {}

    static double length(List<double[]> line) {
        double length = 0;
        for (int i = 1; i < line.size(); i++) {
            length += distance(line.get(i - 1), line.get(i));
        }
        return length;
    }

    static double distance(double[] a, double[] b) {
        return Math.hypot(a[0] - b[0], a[1] - b[1]);
    }

    /** The point at a length from the start, held within the line. */
    static double[] at(List<double[]> line, double length) {
        double left = Math.max(0, length);
        for (int i = 1; i < line.size(); i++) {
            double piece = distance(line.get(i - 1), line.get(i));
            if (left <= piece && piece > 0) {
                return between(line.get(i - 1), line.get(i), left / piece);
            }
            left -= piece;
        }
        return line.get(line.size() - 1).clone();
    }

    static double[] between(double[] a, double[] b, double share) {
        return new double[] {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])};
    }

    /** Unit direction at a length from the start, taken over a span about it; to the right where the line has no length. */
    static double[] direction(List<double[]> line, double length, double span) {
        double whole = length(line);
        double[] a = at(line, Math.max(0, Math.min(length, whole) - span / 2));
        double[] b = at(line, Math.min(whole, Math.max(length, 0) + span / 2));
        return unit(a, b);
    }

    static double[] unit(double[] from, double[] to) {
        double d = distance(from, to);
        return d > 1e-9 ? new double[] {(to[0] - from[0]) / d, (to[1] - from[1]) / d} : new double[] {1, 0};
    }

    /** The piece between two lengths from the start; at least its two ends. */
    static List<double[]> piece(List<double[]> line, double from, double to) {
        List<double[]> piece = new ArrayList<>();
        piece.add(at(line, from));
        double done = 0;
        for (int i = 1; i < line.size(); i++) {
            done += distance(line.get(i - 1), line.get(i));
            if (done > from + 1e-9 && done < to - 1e-9) {
                piece.add(line.get(i).clone());
            }
        }
        piece.add(at(line, Math.max(from, to)));
        return piece;
    }

    /** Distance of a point to a line. */
    static double distance(double[] p, List<double[]> line) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < line.size(); i++) {
            least = Math.min(least, distance(p, line.get(i - 1), line.get(i)));
        }
        return least;
    }

    static double distance(double[] p, double[] a, double[] b) {
        double dx = b[0] - a[0];
        double dy = b[1] - a[1];
        double squared = dx * dx + dy * dy;
        double share = squared > 0 ? ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared : 0;
        return distance(p, between(a, b, Math.max(0, Math.min(1, share))));
    }

    /** How often two lines cross. */
    static int crossings(List<double[]> a, List<double[]> b) {
        int count = 0;
        for (int i = 1; i < a.size(); i++) {
            for (int j = 1; j < b.size(); j++) {
                count += cross(a.get(i - 1), a.get(i), b.get(j - 1), b.get(j)) ? 1 : 0;
            }
        }
        return count;
    }

    private static boolean cross(double[] a, double[] b, double[] c, double[] d) {
        return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
    }

    private static double side(double[] a, double[] b, double[] p) {
        return Math.signum((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));
    }

    /** Douglas and Peucker, 1973: the fewest of its points that stay within a tolerance of all the others. */
    static List<double[]> simplified(List<double[]> line, double tolerance) {
        if (line.size() < 3) {
            return new ArrayList<>(line);
        }
        boolean[] kept = new boolean[line.size()];
        kept[0] = true;
        kept[line.size() - 1] = true;
        keep(line, 0, line.size() - 1, tolerance, kept);
        List<double[]> simple = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            if (kept[i]) {
                simple.add(line.get(i));
            }
        }
        return simple;
    }

    private static void keep(List<double[]> line, int from, int to, double tolerance, boolean[] kept) {
        int farthest = -1;
        double most = tolerance;
        for (int i = from + 1; i < to; i++) {
            double d = distance(line.get(i), line.get(from), line.get(to));
            if (d > most) {
                most = d;
                farthest = i;
            }
        }
        if (farthest >= 0) {
            kept[farthest] = true;
            keep(line, from, farthest, tolerance, kept);
            keep(line, farthest, to, tolerance, kept);
        }
    }

    /** A round line through the points: Catmull-Rom with knots by the root of the distance, which makes no loops (Yuksel and others, 2011). */
    static List<double[]> round(List<double[]> line, double step) {
        if (line.size() < 3) {
            return new ArrayList<>(line);
        }
        List<double[]> round = new ArrayList<>();
        for (int i = 0; i + 1 < line.size(); i++) {
            double[] b = line.get(i);
            double[] c = line.get(i + 1);
            double[] a = i > 0 ? line.get(i - 1) : beyond(c, b);
            double[] d = i + 2 < line.size() ? line.get(i + 2) : beyond(b, c);
            int pieces = Math.max(1, (int) Math.ceil(distance(b, c) / step));
            for (int k = 0; k < pieces; k++) {
                round.add(catmullRom(a, b, c, d, k / (double) pieces));
            }
        }
        round.add(line.get(line.size() - 1));
        return round;
    }

    private static double[] beyond(double[] from, double[] to) {
        return new double[] {2 * to[0] - from[0], 2 * to[1] - from[1]};
    }

    private static double[] catmullRom(double[] a, double[] b, double[] c, double[] d, double share) {
        double t1 = knot(a, b);
        double t2 = t1 + knot(b, c);
        double t3 = t2 + knot(c, d);
        double t = t1 + share * (t2 - t1);
        double[] a1 = between(a, b, t / t1);
        double[] a2 = between(b, c, (t - t1) / (t2 - t1));
        double[] a3 = between(c, d, (t - t2) / (t3 - t2));
        double[] b1 = between(a1, a2, t / t2);
        double[] b2 = between(a2, a3, (t - t1) / (t3 - t1));
        return between(b1, b2, (t - t1) / (t2 - t1));
    }

    private static double knot(double[] a, double[] b) {
        return Math.max(1e-6, Math.sqrt(distance(a, b)));
    }

    /** A zigzag about a line: straight at both ends, teeth of even length between. */
    static List<double[]> zigzag(
            List<double[]> line, double height, double tooth, double straightStart, double straightEnd) {
        double whole = length(line);
        double run = whole - straightStart - straightEnd;
        int teeth = (int) Math.round(run / tooth);
        if (teeth < 2) {
            return new ArrayList<>(line);
        }
        List<double[]> zigzag = new ArrayList<>();
        zigzag.add(at(line, 0));
        zigzag.add(at(line, straightStart));
        for (int k = 0; k < teeth; k++) {
            double s = straightStart + run * (k + 0.5) / teeth;
            double[] p = at(line, s);
            double[] u = direction(line, s, tooth);
            double side = k % 2 == 0 ? height : -height;
            zigzag.add(new double[] {p[0] - u[1] * side, p[1] + u[0] * side});
        }
        zigzag.add(at(line, whole - straightEnd));
        zigzag.add(at(line, whole));
        return zigzag;
    }
}
