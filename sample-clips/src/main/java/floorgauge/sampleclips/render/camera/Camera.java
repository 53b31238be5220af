package floorgauge.sampleclips.render.camera;

import floorgauge.court.floor.PixelPoint;
import java.util.Objects;
import java.util.Optional;

/**
 * A camera at one instant: a lens, and where it stands. A court point X lies at R X + t in the camera's frame (x right, y
 * down, z forward).
 */
public final class Camera {

    /** Nearest depth in metres at which a point still has a picture. */
    public static final double NEAREST_METRES = 0.15;

    private final Lens lens;
    private final double[] rotation;
    private final double[] translation;

    /**
     * @param rotation row-major 3 x 3, court to camera
     * @param translation 3, metres, camera frame
     */
    public Camera(Lens lens, double[] rotation, double[] translation) {
        this.lens = Objects.requireNonNull(lens, "lens");
        this.rotation = rotation.clone();
        this.translation = translation.clone();
        if (rotation.length != 9 || translation.length != 3) {
            throw new IllegalArgumentException("a camera has a 3 x 3 rotation and 3 figures of translation");
        }
        requireRotation(this.rotation);
    }

    /** A camera at a point, looking at another, turned about its own axis by {@code rollRadians}. */
    public static Camera lookingAt(Lens lens, double[] position, double[] target, double rollRadians) {
        double[] z = unit(new double[] {target[0] - position[0], target[1] - position[1], target[2] - position[2]});
        double[] x = unit(new double[] {z[1], -z[0], 0});
        double[] y = cross(z, x);
        double c = Math.cos(rollRadians);
        double s = Math.sin(rollRadians);
        double[] r = new double[9];
        for (int i = 0; i < 3; i++) {
            r[i] = c * x[i] + s * y[i];
            r[3 + i] = -s * x[i] + c * y[i];
            r[6 + i] = z[i];
        }
        double[] t = new double[3];
        for (int i = 0; i < 3; i++) {
            t[i] = -(r[3 * i] * position[0] + r[3 * i + 1] * position[1] + r[3 * i + 2] * position[2]);
        }
        return new Camera(lens, r, t);
    }

    public Lens lens() {
        return lens;
    }

    /** Row-major, court to camera; a copy. */
    public double[] rotation() {
        return rotation.clone();
    }

    /** Metres, camera frame; a copy. */
    public double[] translation() {
        return translation.clone();
    }

    /** Where the camera stands, court frame: -R' t. */
    public double[] position() {
        double[] p = new double[3];
        for (int i = 0; i < 3; i++) {
            p[i] = 0
                    - (rotation[i] * translation[0]
                            + rotation[3 + i] * translation[1]
                            + rotation[6 + i] * translation[2]);
        }
        return p;
    }

    /**
     * Projects a court point.
     *
     * @param out receives column, row and depth in metres
     * @return false where the point has no picture: behind the camera or outside what the lens takes in
     */
    public boolean project(double x, double y, double z, double[] out) {
        double[] r = rotation;
        double depth = r[6] * x + r[7] * y + r[8] * z + translation[2];
        if (depth < NEAREST_METRES) {
            return false;
        }
        double px = (r[0] * x + r[1] * y + r[2] * z + translation[0]) / depth;
        double py = (r[3] * x + r[4] * y + r[5] * z + translation[1]) / depth;
        if (!lens.accepts(px, py)) {
            return false;
        }
        out[0] = lens.pixelX(px, py);
        out[1] = lens.pixelY(px, py);
        out[2] = depth;
        return true;
    }

    /** The picture of a court point; empty where it has none. May lie outside the picture's edges. */
    public Optional<PixelPoint> pixelAt(double x, double y, double z) {
        double[] out = new double[3];
        return project(x, y, z, out) ? Optional.of(new PixelPoint(out[0], out[1])) : Optional.empty();
    }

    /**
     * Court-frame direction of the ray through a pixel, not of unit length.
     *
     * @param out receives the direction; needs room for 3
     */
    public void direction(double u, double v, double[] out) {
        lens.ray(u, v, out);
        double a = out[0];
        double b = out[1];
        for (int i = 0; i < 3; i++) {
            out[i] = rotation[i] * a + rotation[3 + i] * b + rotation[6 + i];
        }
    }

    /**
     * Homography from floor metres (x, y, 1) to undistorted pixels, row-major 9, last element 1: K [r1 r2 t].
     */
    public double[] homographyFloorToPixel() {
        double[] m = new double[9];
        double[][] columns = {
            {rotation[0], rotation[3], rotation[6]},
            {rotation[1], rotation[4], rotation[7]},
            {translation[0], translation[1], translation[2]}
        };
        for (int c = 0; c < 3; c++) {
            double[] v = columns[c];
            m[c] = lens.fx() * v[0] + lens.cx() * v[2];
            m[3 + c] = lens.fy() * v[1] + lens.cy() * v[2];
            m[6 + c] = v[2];
        }
        double scale = m[8];
        for (int i = 0; i < 9; i++) {
            m[i] /= scale;
        }
        return m;
    }

    private static void requireRotation(double[] r) {
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double dot = r[3 * i] * r[3 * j] + r[3 * i + 1] * r[3 * j + 1] + r[3 * i + 2] * r[3 * j + 2];
                if (!(Math.abs(dot - (i == j ? 1 : 0)) < 1e-6)) {
                    throw new IllegalArgumentException("the rows of R must be orthonormal to 1e-6");
                }
            }
        }
        double determinant = r[0] * (r[4] * r[8] - r[5] * r[7])
                - r[1] * (r[3] * r[8] - r[5] * r[6])
                + r[2] * (r[3] * r[7] - r[4] * r[6]);
        if (determinant < 0) {
            throw new IllegalArgumentException("R must be right-handed: its determinant is " + determinant);
        }
    }

    private static double[] unit(double[] v) {
        double n = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
        if (!(n > 1e-9)) {
            throw new IllegalArgumentException("a camera must look somewhere, and not straight up or down");
        }
        return new double[] {v[0] / n, v[1] / n, v[2] / n};
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }
}
