package floorgauge.court.calibration;

import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.PaintedLine;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What must hold before marked points can be fitted at all; each failure has a sentence of its own. */
final class PointsSanity {

    /** Marks come no closer to a line than a painted line is wide, or they count as on it. */
    private static final double FLOOR_TOLERANCE_METRES = 0.10;

    /** The same in the picture, as a share of its diagonal. */
    private static final double PICTURE_TOLERANCE = 0.002;

    private PointsSanity() {}

    /** Figures of a court's place in the picture: two a point, one a place on a line. */
    private static final int COURT_FIGURES = 8;

    /** @throws MendableException saying what is wrong and what to do */
    static void require(List<CourtMark> marks, int width, int height) {
        List<MarkedPoint> points = points(marks);
        boolean pointsAlone = points.size() == marks.size();
        if (pointsAlone && points.size() < 4) {
            throw new MendableException("a court needs at least four marked points, but there "
                    + (points.size() == 1 ? "is 1" : "are " + points.size()) + "; mark more");
        }
        Set<String> labels = new HashSet<>();
        for (CourtMark mark : marks) {
            if (!labels.add(mark.label())) {
                throw new MendableException(mark.label() + " is marked twice; keep one");
            }
            if (mark.pixel().x() < -0.5
                    || mark.pixel().y() < -0.5
                    || mark.pixel().x() > width - 0.5
                    || mark.pixel().y() > height - 0.5) {
                throw new MendableException(mark.label() + " lies off the picture, which is " + width + " x " + height
                        + ": (" + mark.pixel().x() + ", " + mark.pixel().y() + ")");
            }
        }
        if (!pointsAlone) {
            requireLines(marks, width, height);
            return;
        }
        if (!hasFourInGeneralPosition(floor(points), FLOOR_TOLERANCE_METRES)) {
            throw new MendableException(
                    "too many of the marked points lie in one line on the floor; mark points on other lines of the court");
        }
        if (!hasFourInGeneralPosition(film(points), PICTURE_TOLERANCE * Math.hypot(width, height))) {
            throw new MendableException("too many of the marked points lie in one line in the picture;"
                    + " the camera may stand too low, or a point is marked in the wrong place");
        }
    }

    /** A straight line settles at most two figures however often it is marked; arcs refine a court but begin none. */
    private static void requireLines(List<CourtMark> marks, int width, int height) {
        Map<PaintedLine, Integer> places = new LinkedHashMap<>();
        int settled = 0;
        for (CourtMark mark : marks) {
            if (mark instanceof MarkedPlace place) {
                int before = places.merge(place.line(), 1, Integer::sum);
                settled += place.line() instanceof PaintedLine.Straight && before <= 2 ? 1 : 0;
            } else {
                settled += mark.settles();
            }
        }
        if (settled < COURT_FIGURES) {
            throw new MendableException("the marks settle " + settled + " of the court's " + COURT_FIGURES
                    + " figures (a point settles two, a straight line marked at two places two, an arc none to begin with);"
                    + " mark more points or lines");
        }
        if (MarksDlt.open(marks, width, height)) {
            throw new MendableException("the marked lines and points leave the court's place open: too many lie in one"
                    + " line, or all lines run the same way; mark a line across them");
        }
    }

    /** The points among the marks. */
    static List<MarkedPoint> points(List<CourtMark> marks) {
        return marks.stream()
                .filter(MarkedPoint.class::isInstance)
                .map(MarkedPoint.class::cast)
                .toList();
    }

    static double[][] floor(List<MarkedPoint> points) {
        return points.stream()
                .map(p -> new double[] {p.floor().xMetres(), p.floor().yMetres()})
                .toArray(double[][]::new);
    }

    static double[][] film(List<MarkedPoint> points) {
        return points.stream()
                .map(p -> new double[] {p.pixel().x(), p.pixel().y()})
                .toArray(double[][]::new);
    }

    /** Whether some four of the points have no three within the tolerance of a line. */
    private static boolean hasFourInGeneralPosition(double[][] p, double tolerance) {
        for (int a = 0; a < p.length; a++) {
            for (int b = a + 1; b < p.length; b++) {
                for (int c = b + 1; c < p.length; c++) {
                    if (!inLine(p[a], p[b], p[c], tolerance) && hasFourth(p, a, b, c, tolerance)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static boolean hasFourth(double[][] p, int a, int b, int c, double tolerance) {
        for (int d = c + 1; d < p.length; d++) {
            if (!inLine(p[a], p[b], p[d], tolerance)
                    && !inLine(p[a], p[c], p[d], tolerance)
                    && !inLine(p[b], p[c], p[d], tolerance)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the least height of the triangle is within the tolerance. */
    private static boolean inLine(double[] a, double[] b, double[] c, double tolerance) {
        double doubledArea = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
        double longest = Math.max(
                Math.hypot(b[0] - a[0], b[1] - a[1]),
                Math.max(Math.hypot(c[0] - a[0], c[1] - a[1]), Math.hypot(c[0] - b[0], c[1] - b[1])));
        return doubledArea <= tolerance * longest;
    }
}
