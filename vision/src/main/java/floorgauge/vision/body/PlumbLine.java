package floorgauge.vision.body;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.PinholeCamera;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import java.util.Optional;

/**
 * Finds the floor straight below a point of the body that is seen while the feet are not: the floor point X for which a
 * point at height h over it appears at the pixel p, {@code f(X, h) = p}, by Newton's method. To first order its covariance
 * is {@code A S A' + (A df/dh) s (A df/dh)'}, with {@code A} the inverse of {@code df/dX}, {@code S} the pixel's covariance
 * and {@code s} the variance of the height.
 */
final class PlumbLine {

    private static final int MOST_STEPS = 20;

    /** Residual at which the point is found, pixels. */
    private static final double CLOSE_PIXELS = 1e-3;

    /** Step of the numerical derivatives, metres. */
    private static final double STEP_METRES = 1e-3;

    /** A step of Newton's method is never longer than this, metres. */
    private static final double LONGEST_STEP_METRES = 5;

    private final CourtCalibration calibration;
    private final Optional<PinholeCamera> camera;

    PlumbLine(CourtCalibration calibration) {
        this.calibration = calibration;
        this.camera = calibration.camera();
    }

    /**
     * The floor below.
     *
     * @param start near the place, as far as that is known
     * @param seen the point of the body in the picture
     * @param sigmaPixels standard deviation of that point on each axis
     * @param heightMetres of the point over the floor, above 0
     * @param heightErrorMetres standard deviation of that height
     * @return empty where the camera is not known or sees no such point
     */
    Optional<FloorEstimate> below(
            FloorPoint start, PixelPoint seen, double sigmaPixels, double heightMetres, double heightErrorMetres) {
        if (camera.isEmpty()) {
            return Optional.empty();
        }
        PinholeCamera view = camera.get();
        double x = start.xMetres();
        double y = start.yMetres();
        for (int i = 0; i < MOST_STEPS; i++) {
            Optional<Local> local = Local.at(view, x, y, heightMetres);
            if (local.isEmpty()) {
                return Optional.empty();
            }
            double du = seen.x() - local.get().u();
            double dv = seen.y() - local.get().v();
            if (Math.hypot(du, dv) < CLOSE_PIXELS) {
                return estimate(new FloorPoint(x, y), local.get(), sigmaPixels, heightErrorMetres);
            }
            double dx = local.get().floorX(du, dv);
            double dy = local.get().floorY(du, dv);
            double scale = Math.min(1, LONGEST_STEP_METRES / Math.hypot(dx, dy));
            x += scale * dx;
            y += scale * dy;
        }
        return Optional.empty();
    }

    private Optional<FloorEstimate> estimate(FloorPoint point, Local local, double sigmaPixels, double heightError) {
        Optional<FloorCovariance> own = calibration
                .estimate(calibration.pixelAt(point), sigmaPixels, sigmaPixels)
                .map(FloorEstimate::covariance);
        double hx = local.floorX(local.uByHeight(), local.vByHeight()) * heightError;
        double hy = local.floorY(local.uByHeight(), local.vByHeight()) * heightError;
        return own.map(c ->
                new FloorEstimate(point, new FloorCovariance(c.xx() + hx * hx, c.xy() + hx * hy, c.yy() + hy * hy)));
    }

    /** The projection about a point, with its derivatives by floor and height. */
    private record Local(
            double u,
            double v,
            double uByX,
            double uByY,
            double vByX,
            double vByY,
            double uByHeight,
            double vByHeight) {

        static Optional<Local> at(PinholeCamera view, double x, double y, double h) {
            Optional<PixelPoint> p = view.toFilm(x, y, h);
            Optional<PixelPoint> px = view.toFilm(x + STEP_METRES, y, h);
            Optional<PixelPoint> py = view.toFilm(x, y + STEP_METRES, h);
            Optional<PixelPoint> ph = view.toFilm(x, y, h + STEP_METRES);
            if (p.isEmpty() || px.isEmpty() || py.isEmpty() || ph.isEmpty()) {
                return Optional.empty();
            }
            double u = p.get().x();
            double v = p.get().y();
            Local local = new Local(
                    u,
                    v,
                    (px.get().x() - u) / STEP_METRES,
                    (py.get().x() - u) / STEP_METRES,
                    (px.get().y() - v) / STEP_METRES,
                    (py.get().y() - v) / STEP_METRES,
                    (ph.get().x() - u) / STEP_METRES,
                    (ph.get().y() - v) / STEP_METRES);
            return Math.abs(local.determinant()) < 1e-9 ? Optional.empty() : Optional.of(local);
        }

        double determinant() {
            return uByX * vByY - uByY * vByX;
        }

        double floorX(double du, double dv) {
            return (vByY * du - uByY * dv) / determinant();
        }

        double floorY(double du, double dv) {
            return (uByX * dv - vByX * du) / determinant();
        }
    }
}
