package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import java.util.Optional;

/**
 * The camera behind a homography of the floor, under square pixels and a centred principal point: {@code K [r1 r2 t]}
 * equals the floor's homography, {@code r3 = r1 x r2}.
 *
 * <p>With the principal point moved to the origin and {@code g} the homography's columns, {@code r1 . r2 = 0} and
 * {@code |r1| = |r2|} are linear in {@code 1 / f^2}; both are solved together by least squares.
 *
 * <p>Source: Zhang, A flexible new technique for camera calibration (PAMI 22, 2000), section 3.1, with one unknown.
 *
 * @param focalPixels focal length in pixels, above 0
 * @param rotation court frame to camera frame (x right, y down, z ahead), row by row
 * @param translation of the court's origin in the camera frame, metres
 * @param lens after the pinhole
 */
public record PinholeCamera(double focalPixels, Rotation rotation, Vector translation, Lens lens) {

    /** Focal lengths outside these multiples of half the diagonal belong to no camera that films a game. */
    private static final double SHORTEST_FOCAL = 0.25;

    private static final double LONGEST_FOCAL = 40;

    /** A 3 x 3 rotation, row by row. */
    public record Rotation(
            double xx, double xy, double xz, double yx, double yy, double yz, double zx, double zy, double zz) {}

    /** Three coordinates. */
    public record Vector(double x, double y, double z) {}

    /** The camera, or empty where the homography does not tell it: seen straight from above, or not a camera's. */
    public static Optional<PinholeCamera> of(FloorProjection projection) {
        Lens lens = projection.lens();
        double scale = lens.radiusPixels();
        Homography g = Homography.of(
                        1 / scale, 0, -lens.centreX() / scale, 0, 1 / scale, -lens.centreY() / scale, 0, 0, 1)
                .after(projection.floorToIdeal());
        double a1 = g.at(0, 0) * g.at(0, 1) + g.at(1, 0) * g.at(1, 1);
        double b1 = g.at(2, 0) * g.at(2, 1);
        double a2 = (square(g.at(0, 0)) + square(g.at(1, 0)) - square(g.at(0, 1)) - square(g.at(1, 1))) / 2;
        double b2 = (square(g.at(2, 0)) - square(g.at(2, 1))) / 2;
        double inverseSquare = -(a1 * b1 + a2 * b2) / (a1 * a1 + a2 * a2);
        double focal = 1 / Math.sqrt(inverseSquare);
        if (!(focal >= SHORTEST_FOCAL && focal <= LONGEST_FOCAL)) {
            return Optional.empty();
        }
        double length = Math.sqrt(Math.sqrt((squaredLength(g, 0, focal)) * squaredLength(g, 1, focal)));
        double[] r1 = column(g, 0, focal, length);
        double[] r2 = column(g, 1, focal, length);
        double[] t = column(g, 2, focal, length);
        orthonormalise(r1, r2);
        return Optional.of(new PinholeCamera(focal * scale, rotationOf(r1, r2), new Vector(t[0], t[1], t[2]), lens))
                .filter(camera -> camera.position().z() > 0);
    }

    private static Rotation rotationOf(double[] r1, double[] r2) {
        double[] r3 = {r1[1] * r2[2] - r1[2] * r2[1], r1[2] * r2[0] - r1[0] * r2[2], r1[0] * r2[1] - r1[1] * r2[0]};
        return new Rotation(r1[0], r2[0], r3[0], r1[1], r2[1], r3[1], r1[2], r2[2], r3[2]);
    }

    /** Turns the two unit vectors apart evenly until they are at right angles: the nearest pair to both. */
    private static void orthonormalise(double[] r1, double[] r2) {
        normalise(r1);
        normalise(r2);
        double[] sum = {r1[0] + r2[0], r1[1] + r2[1], r1[2] + r2[2]};
        double[] difference = {r1[0] - r2[0], r1[1] - r2[1], r1[2] - r2[2]};
        normalise(sum);
        normalise(difference);
        for (int i = 0; i < 3; i++) {
            r1[i] = (sum[i] + difference[i]) * Math.sqrt(0.5);
            r2[i] = (sum[i] - difference[i]) * Math.sqrt(0.5);
        }
    }

    private static void normalise(double[] v) {
        double length = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
        for (int i = 0; i < 3; i++) {
            v[i] /= length;
        }
    }

    private static double squaredLength(Homography g, int column, double focal) {
        return square(g.at(0, column) / focal) + square(g.at(1, column) / focal) + square(g.at(2, column));
    }

    private static double[] column(Homography g, int column, double focal, double length) {
        return new double[] {
            g.at(0, column) / focal / length, g.at(1, column) / focal / length, g.at(2, column) / length
        };
    }

    private static double square(double x) {
        return x * x;
    }

    /** Where the camera stands, in the court frame, metres: {@code -R' t}. */
    public Vector position() {
        Rotation r = rotation;
        Vector t = translation;
        return new Vector(
                -(r.xx() * t.x() + r.yx() * t.y() + r.zx() * t.z()),
                -(r.xy() * t.x() + r.yy() * t.y() + r.zy() * t.z()),
                -(r.xz() * t.x() + r.yz() * t.y() + r.zz() * t.z()));
    }

    /** Where a point of the court frame appears in the film; empty behind the camera. */
    public Optional<PixelPoint> toFilm(double x, double y, double z) {
        Rotation r = rotation;
        double depth = r.zx() * x + r.zy() * y + r.zz() * z + translation.z();
        if (!(depth > 0)) {
            return Optional.empty();
        }
        double right = r.xx() * x + r.xy() * y + r.xz() * z + translation.x();
        double down = r.yx() * x + r.yy() * y + r.yz() * z + translation.y();
        return lens.bend(lens.centreX() + focalPixels * right / depth, lens.centreY() + focalPixels * down / depth);
    }
}
