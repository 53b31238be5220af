package floorgauge.vision.ball;

import floorgauge.court.calibration.PinholeCamera;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.PixelPoint;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Fits free flight to what one camera saw. With {@code (X, Y, Z)} the ball in the camera's frame and {@code (u, v)} the
 * sighting's bearing, {@code X - u Z = 0} and {@code Y - v Z = 0} are linear in the six unknowns; the sighting's size adds
 * {@code Z = f r / radius}, the players at both ends add where it began and ended. Solved twice, the second time with the
 * depths of the first as weights.
 */
final class FlightFitter {

    private static final int UNKNOWNS = 6;

    /** Error of a sighting's centre, as a share of the radius and at least in pixels. */
    private static final double PLACE_SHARE = 0.25;

    private static final double PLACE_PIXELS = 1.0;

    /** Relative error of a distance told by the ball's size. */
    private static final double DEPTH_SHARE = 0.2;

    /** Height of hands at release and reception, one standard deviation, metres. */
    private static final double HAND_HEIGHT_ERROR = 0.5;

    /** No pass or shot is much faster, m/s; keeps ends without a player in bounds. */
    private static final double SPEED_SPREAD = 10;

    /** A parabola that misses the sightings by more radii than this is none: the ball bounced. */
    private static final double MOST_RADII = 1.5;

    private final PinholeCamera camera;

    FlightFitter(PinholeCamera camera) {
        this.camera = camera;
    }

    /**
     * @param points in flight, in order of time, at least one
     * @param start where it left hands; empty where not known
     * @param end where it came to hands; empty where not known
     * @return empty where no single free flight explains the sightings
     */
    Optional<Flight> fit(List<BallPoint> points, Optional<FlightEnd> start, Optional<FlightEnd> end) {
        double t0 = start.map(FlightEnd::timeSeconds).orElse(points.get(0).timeSeconds());
        double[] depths = new double[points.size()];
        for (int k = 0; k < depths.length; k++) {
            depths[k] = sizeDepth(points.get(k));
        }
        Optional<Flight> first = solve(points, start, end, t0, depths);
        if (first.isEmpty()) {
            return first;
        }
        for (int k = 0; k < depths.length; k++) {
            double[] x = place(first.get(), points.get(k).timeSeconds());
            depths[k] = Math.max(1, Sight.depth(camera, x[0], x[1], x[2]));
        }
        return solve(points, start, end, t0, depths).filter(flight -> plausible(flight, points));
    }

    private double sizeDepth(BallPoint point) {
        return camera.focalPixels() * BallSize.RADIUS_METRES / point.sighting().radiusPixels();
    }

    private Optional<Flight> solve(
            List<BallPoint> points, Optional<FlightEnd> start, Optional<FlightEnd> end, double t0, double[] depths) {
        RealMatrix normal = new Array2DRowRealMatrix(UNKNOWNS, UNKNOWNS);
        RealVector right = new ArrayRealVector(UNKNOWNS);
        for (int k = 0; k < points.size(); k++) {
            addSighting(normal, right, points.get(k), t0, depths[k]);
        }
        start.ifPresent(e -> addEnd(normal, right, e, t0));
        end.ifPresent(e -> addEnd(normal, right, e, t0));
        for (int i = 3; i < UNKNOWNS; i++) {
            normal.addToEntry(i, i, 1 / (SPEED_SPREAD * SPEED_SPREAD));
        }
        // A ball that nobody released is known to be over the court and below its roof at least.
        for (int i = 0; i < 3; i++) {
            normal.addToEntry(i, i, 1e-4);
        }
        try {
            CholeskyDecomposition decomposition = new CholeskyDecomposition(normal, 1e-9, 1e-12);
            double[] state = decomposition.getSolver().solve(right).toArray();
            RealMatrix covariance = decomposition.getSolver().getInverse();
            Flight flight = new Flight(t0, state, covariance, 0);
            return Optional.of(new Flight(t0, state, covariance, pixelError(flight, points)));
        } catch (org.hipparchus.exception.MathIllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private void addSighting(RealMatrix normal, RealVector right, BallPoint point, double t0, double depth) {
        Optional<double[]> bearing = Sight.bearing(camera, point.sighting().centre());
        if (bearing.isEmpty()) {
            return;
        }
        double s = point.timeSeconds() - t0;
        PinholeCamera.Rotation r = camera.rotation();
        PinholeCamera.Vector t = camera.translation();
        double u = bearing.get()[0];
        double v = bearing.get()[1];
        double pixels = Math.max(PLACE_PIXELS, PLACE_SHARE * point.sighting().radiusPixels());
        double place = pixels / camera.focalPixels() * depth;
        add(normal, right, s, r.xx() - u * r.zx(), r.xy() - u * r.zy(), r.xz() - u * r.zz(), t.x() - u * t.z(), place);
        add(normal, right, s, r.yx() - v * r.zx(), r.yy() - v * r.zy(), r.yz() - v * r.zz(), t.y() - v * t.z(), place);
        double bySize = sizeDepth(point);
        add(normal, right, s, r.zx(), r.zy(), r.zz(), t.z() - bySize, DEPTH_SHARE * bySize);
    }

    private static void addEnd(RealMatrix normal, RealVector right, FlightEnd end, double t0) {
        double s = end.timeSeconds() - t0;
        FloorCovariance c = end.floor().covariance();
        add(normal, right, s, 1, 0, 0, -end.floor().mean().xMetres(), Math.sqrt(c.xx()));
        add(normal, right, s, 0, 1, 0, -end.floor().mean().yMetres(), Math.sqrt(c.yy()));
        add(normal, right, s, 0, 0, 1, -end.heightMetres(), HAND_HEIGHT_ERROR);
    }

    /** One equation {@code a . X(s) + constant = 0} with a standard error. */
    private static void add(
            RealMatrix normal,
            RealVector right,
            double s,
            double ax,
            double ay,
            double az,
            double constant,
            double error) {
        double[] row = {ax, ay, az, ax * s, ay * s, az * s};
        double known = constant - az * Flight.GRAVITY * s * s / 2;
        double weight = 1 / (error * error);
        for (int i = 0; i < UNKNOWNS; i++) {
            for (int j = 0; j < UNKNOWNS; j++) {
                normal.addToEntry(i, j, weight * row[i] * row[j]);
            }
            right.addToEntry(i, -weight * row[i] * known);
        }
    }

    private static double[] place(Flight flight, double time) {
        double s = time - flight.startSeconds();
        double[] x = flight.state();
        return new double[] {x[0] + s * x[3], x[1] + s * x[4], flight.heightAt(time)};
    }

    private double pixelError(Flight flight, List<BallPoint> points) {
        double sum = 0;
        for (BallPoint point : points) {
            double[] x = place(flight, point.timeSeconds());
            Optional<PixelPoint> seen = camera.toFilm(x[0], x[1], x[2]);
            double d = seen.map(p -> p.distanceTo(point.sighting().centre())).orElse(1e4);
            sum += d * d;
        }
        return Math.sqrt(sum / points.size());
    }

    private static boolean plausible(Flight flight, List<BallPoint> points) {
        double radius = points.stream()
                .mapToDouble(p -> p.sighting().radiusPixels())
                .average()
                .orElse(1);
        double lowest = points.stream()
                .mapToDouble(p -> flight.heightAt(p.timeSeconds()))
                .min()
                .orElse(0);
        return flight.pixelError() <= MOST_RADII * radius && lowest > -3 * BallSize.RADIUS_METRES;
    }
}
