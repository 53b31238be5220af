package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.PaintedLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * A first homography from marks, in front of the camera: of points alone by {@link NormalisedDlt}, of points and places on
 * straight lines by the homography G from the picture to the floor, in which both are linear: {@code X x (G p) = 0} for a
 * point X, {@code l . (G p) = 0} for a line l. Places on arcs, which are not linear, wait for the refinement.
 */
final class MarksDlt {

    /** Below this ratio of the eighth to the first singular value the marks leave more than one homography open. */
    private static final double RANK_TOLERANCE = 1e-5;

    /** Metres to units of about one on a court. */
    private static final double FLOOR_SCALE = 0.1;

    private MarksDlt() {}

    /** Floor to picture; empty where the marks leave it open, or lie on both sides of the horizon. */
    static Optional<Homography> fit(List<CourtMark> marks, int width, int height) {
        List<MarkedPoint> points = PointsSanity.points(marks);
        Optional<Homography> found = points.size() == marks.size()
                ? NormalisedDlt.fit(PointsSanity.floor(points), PointsSanity.film(points))
                : mixed(marks, width, height);
        return found.flatMap(h -> oriented(h, marks));
    }

    /** Whether points and places leave more than one court possible. */
    static boolean open(List<CourtMark> marks, int width, int height) {
        return mixed(marks, width, height).isEmpty();
    }

    private static Optional<Homography> mixed(List<CourtMark> marks, int width, int height) {
        Homography film = Homography.similarity(2.0 / width, width / 2.0, height / 2.0);
        Homography floor = Homography.similarity(FLOOR_SCALE, 0, 0);
        List<double[]> rows = new ArrayList<>();
        for (CourtMark mark : marks) {
            PixelPoint at = mark.pixel();
            double[] p = {film.mapX(at.x(), at.y()), film.mapY(at.x(), at.y())};
            if (mark instanceof MarkedPoint point) {
                double x = FLOOR_SCALE * point.floor().xMetres();
                double y = FLOOR_SCALE * point.floor().yMetres();
                rows.add(new double[] {p[0], p[1], 1, 0, 0, 0, -x * p[0], -x * p[1], -x});
                rows.add(new double[] {0, 0, 0, p[0], p[1], 1, -y * p[0], -y * p[1], -y});
            } else if (((MarkedPlace) mark).line() instanceof PaintedLine.Straight line) {
                double a = line.from().yMetres() - line.to().yMetres();
                double b = line.to().xMetres() - line.from().xMetres();
                double length = Math.hypot(a, b);
                a /= length;
                b /= length;
                double c = -FLOOR_SCALE
                        * (a * line.from().xMetres() + b * line.from().yMetres());
                rows.add(new double[] {a * p[0], a * p[1], a, b * p[0], b * p[1], b, c * p[0], c * p[1], c});
            }
        }
        while (rows.size() < 9) {
            rows.add(new double[9]);
        }
        try {
            SingularValueDecomposition svd =
                    new SingularValueDecomposition(new Array2DRowRealMatrix(rows.toArray(new double[0][]), false));
            double[] values = svd.getSingularValues();
            if (values[7] < RANK_TOLERANCE * values[0]) {
                return Optional.empty();
            }
            Homography toFloor = Homography.of(svd.getV().getColumn(8));
            return Optional.of(floor.inverse().after(toFloor).after(film).inverse());
        } catch (IllegalArgumentException | MathRuntimeException degenerate) {
            return Optional.empty();
        }
    }

    /** The sign that puts the marks before the camera; empty where they stand on both sides of it. */
    private static Optional<Homography> oriented(Homography h, List<CourtMark> marks) {
        Homography back = h.inverse();
        long before = marks.stream()
                .filter(mark -> {
                    double x = back.mapX(mark.pixel().x(), mark.pixel().y());
                    double y = back.mapY(mark.pixel().x(), mark.pixel().y());
                    return mark instanceof MarkedPoint point
                            ? h.weight(point.floor().xMetres(), point.floor().yMetres()) > 0
                            : h.weight(x, y) > 0;
                })
                .count();
        if (before == marks.size()) {
            return Optional.of(h);
        }
        return before == 0 ? Optional.of(h.scaled(-1)) : Optional.empty();
    }
}
