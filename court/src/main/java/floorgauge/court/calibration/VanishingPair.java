package floorgauge.court.calibration;

import floorgauge.court.lines.LineSegment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;

/**
 * The vanishing points of the two directions in which a court's straight lines run, in the unit picture: origin in the
 * middle, half the diagonal long. All courts painted on one gym floor share them as a rule, so every sport's lines help.
 *
 * @param first homogeneous, unit length
 * @param second homogeneous, unit length
 * @param support pixels of segments that point to either
 */
record VanishingPair(Direction first, Direction second, double support) {

    /** A horizon steeper than this belongs to a wall, not to a floor: cameras are held level to a few degrees. */
    private static final double STEEPEST_HORIZON = Math.sin(Math.toRadians(12));

    private static final double SHORTEST_FOCAL = 0.4;
    private static final double LONGEST_FOCAL = 8;

    /** A vanishing point farther out than this many half diagonals tells a direction, but no focal length. */
    private static final double FAR = 12;

    /**
     * Where one of two directions at right angles vanishes far out, the other does so at most this many half diagonals from
     * the middle, as measured towards the far one: their product is the squared focal length, here at most 5.5 squared, a
     * field of view of 21 degrees. Without this, lines that run one way are taken for two directions.
     */
    private static final double BESIDE_FAR = 2.5;

    private static final int SEEDS = 70;
    private static final int VOTERS = 350;
    private static final int CANDIDATES = 40;

    /** A homogeneous point of the unit picture, of unit length. */
    record Direction(double x, double y, double w) {

        static Direction of(double x, double y, double w) {
            double length = Math.sqrt(x * x + y * y + w * w);
            return new Direction(x / length, y / length, w / length);
        }

        double cosine(Direction other) {
            return Math.abs(x * other.x + y * other.y + w * other.w);
        }

        /** How far it lies from the middle of the picture, as measured towards another. */
        double along(Direction other) {
            return Math.abs((x * other.x + y * other.y) / (norm(other.x, other.y) * w));
        }

        boolean far() {
            return norm(x, y) > FAR * Math.abs(w);
        }
    }

    /** A segment in the unit picture. */
    private record Voter(double mx, double my, double dx, double dy, double length, double tolerance) {

        static Voter of(LineSegment s, int width, int height) {
            double unit = Math.hypot(width, height) / 2;
            double length = s.length();
            // Two thirds of a degree for a lens that is not quite straight, and a pixel's error at each end.
            double tolerance = Math.min(0.07, 0.012 + 1.6 / length);
            return new Voter(
                    (s.middleX() - (width - 1) / 2.0) / unit,
                    (s.middleY() - (height - 1) / 2.0) / unit,
                    (s.x2() - s.x1()) / length,
                    (s.y2() - s.y1()) / length,
                    length,
                    tolerance);
        }

        Direction line() {
            // Through the middle along the direction.
            return new Direction(-dy, dx, dy * mx - dx * my);
        }

        boolean pointsTo(Direction v) {
            double ex = v.x - v.w * mx;
            double ey = v.y - v.w * my;
            return Math.abs(dx * ey - dy * ex) <= tolerance * norm(ex, ey);
        }
    }

    /**
     * @param segments the longest first
     * @param most how many pairs at most
     * @return pairs that a camera over a floor may see, the best supported first
     */
    static List<VanishingPair> find(List<LineSegment> segments, int width, int height, int most) {
        List<Voter> voters = segments.stream()
                .limit(VOTERS)
                .map(s -> Voter.of(s, width, height))
                .toList();
        List<Direction> candidates = candidates(voters);
        List<VanishingPair> pairs = new ArrayList<>();
        for (int i = 0; i < candidates.size(); i++) {
            for (int j = i + 1; j < candidates.size(); j++) {
                if (plausible(candidates.get(i), candidates.get(j))) {
                    pairs.add(new VanishingPair(
                            candidates.get(i),
                            candidates.get(j),
                            support(candidates.get(i), candidates.get(j), voters)));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble((VanishingPair p) -> -p.support));
        return distinct(pairs, most);
    }

    private static List<VanishingPair> distinct(List<VanishingPair> pairs, int most) {
        List<VanishingPair> kept = new ArrayList<>();
        for (VanishingPair pair : pairs) {
            boolean known = kept.stream().anyMatch(pair::near);
            if (!known && kept.size() < most) {
                kept.add(pair);
            }
        }
        return kept;
    }

    private static List<Direction> candidates(List<Voter> voters) {
        record Scored(Direction direction, double score) {}
        List<Scored> scored = new ArrayList<>();
        int seeds = Math.min(SEEDS, voters.size());
        for (int i = 0; i < seeds; i++) {
            for (int j = i + 1; j < seeds; j++) {
                Direction a = voters.get(i).line();
                Direction b = voters.get(j).line();
                double x = a.y * b.w - a.w * b.y;
                double y = a.w * b.x - a.x * b.w;
                double w = a.x * b.y - a.y * b.x;
                if (x * x + y * y + w * w > 1e-12) {
                    Direction v = Direction.of(x, y, w);
                    scored.add(new Scored(v, score(v, voters)));
                }
            }
        }
        scored.sort(Comparator.comparingDouble((Scored s) -> -s.score));
        List<Direction> kept = new ArrayList<>();
        for (Scored s : scored) {
            if (kept.size() >= CANDIDATES) {
                break;
            }
            Direction refined = refined(s.direction, voters);
            if (kept.stream().noneMatch(k -> k.cosine(refined) > 0.9998)) {
                kept.add(refined);
            }
        }
        return kept;
    }

    private static double score(Direction v, List<Voter> voters) {
        double sum = 0;
        for (Voter voter : voters) {
            sum += voter.pointsTo(v) ? voter.length : 0;
        }
        return sum;
    }

    /** The point nearest to all lines that point to it, twice. */
    private static Direction refined(Direction start, List<Voter> voters) {
        Direction v = start;
        for (int round = 0; round < 2; round++) {
            double[][] m = new double[3][3];
            for (Voter voter : voters) {
                if (voter.pointsTo(v)) {
                    add(m, voter, v);
                }
            }
            EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(m, false));
            double[] smallest = eigen.getEigenvector(2).toArray();
            v = Direction.of(smallest[0], smallest[1], smallest[2]);
        }
        return v;
    }

    private static void add(double[][] m, Voter voter, Direction v) {
        Direction l = voter.line();
        double[] entries = {l.x, l.y, l.w};
        double reach = norm(v.x - v.w * voter.mx, v.y - v.w * voter.my);
        double weight = voter.length * voter.length * voter.length / Math.max(1e-9, reach * reach);
        for (int i = 0; i < 3; i++) {
            for (int j = i; j < 3; j++) {
                m[i][j] += weight * entries[i] * entries[j];
                m[j][i] = m[i][j];
            }
        }
    }

    private static boolean plausible(Direction a, Direction b) {
        if (a.cosine(b) > 0.985) {
            return false;
        }
        double hx = a.y * b.w - a.w * b.y;
        double hy = a.w * b.x - a.x * b.w;
        if (!(Math.abs(hx) <= STEEPEST_HORIZON * norm(hx, hy))) {
            return false;
        }
        if (a.far() || b.far()) {
            return (!a.far() || b.along(a) <= BESIDE_FAR) && (!b.far() || a.along(b) <= BESIDE_FAR);
        }
        double squaredFocal = squaredFocal(a, b);
        return squaredFocal > SHORTEST_FOCAL * SHORTEST_FOCAL && squaredFocal < LONGEST_FOCAL * LONGEST_FOCAL;
    }

    /** From the right angle between the two directions: {@code a' diag(1, 1, f^2) b = 0}. */
    private static double squaredFocal(Direction a, Direction b) {
        return -(a.x * b.x + a.y * b.y) / (a.w * b.w);
    }

    private static double support(Direction a, Direction b, List<Voter> voters) {
        double hx = a.y * b.w - a.w * b.y;
        double hy = a.w * b.x - a.x * b.w;
        double hw = a.x * b.y - a.y * b.x;
        double down = Math.signum(hy);
        double first = 0;
        double second = 0;
        for (Voter voter : voters) {
            if (down * (hx * voter.mx + hy * voter.my + hw) > 0) {
                if (voter.pointsTo(a)) {
                    first += voter.length;
                } else if (voter.pointsTo(b)) {
                    second += voter.length;
                }
            }
        }
        // Two families are needed: a long one does not make up for a missing one.
        return Math.min(first + second, 4 * Math.min(first, second));
    }

    /** Whether both directions are nearly those of another pair. */
    boolean near(VanishingPair other) {
        return first.cosine(other.first) > 0.9995 && second.cosine(other.second) > 0.9995;
    }

    /** Whether the pair tells the focal length, and with it how long a metre is in both directions alike. */
    boolean tellsFocal() {
        return norm(first.x, first.y) < 4 * Math.abs(first.w) && norm(second.x, second.y) < 4 * Math.abs(second.w);
    }

    /** Focal length in half diagonals; only where {@link #tellsFocal}. */
    double focal() {
        return Math.sqrt(squaredFocal(first, second));
    }

    /** Without the care of {@link Math#hypot} for overflow, which these sizes do not need and a million calls feel. */
    private static double norm(double x, double y) {
        return Math.sqrt(x * x + y * y);
    }

    /** The same pair with its directions exchanged. */
    VanishingPair exchanged() {
        return new VanishingPair(second, first, support);
    }
}
