package floorgauge.sampleclips.render.camera;

/**
 * The inside of a camera: pinhole with radial and tangential distortion (Brown, 1966, as OpenCV writes it: k1, k2, p1,
 * p2, k3).
 *
 * <pre>
 * r2 = x2 + y2;  s = 1 + k1 r2 + k2 r4 + k3 r6
 * xd = x s + 2 p1 x y + p2 (r2 + 2 x2)      u = fx xd + cx
 * yd = y s + p1 (r2 + 2 y2) + 2 p2 x y      v = fy yd + cy
 * </pre>
 *
 * @param width picture width in pixels
 * @param height picture height in pixels
 * @param fx focal length in pixel widths
 * @param fy focal length in pixel heights
 * @param cx principal point, pixels
 * @param cy principal point, pixels
 * @param k1 radial
 * @param k2 radial
 * @param p1 tangential
 * @param p2 tangential
 * @param k3 radial
 */
public record Lens(
        int width,
        int height,
        double fx,
        double fy,
        double cx,
        double cy,
        double k1,
        double k2,
        double p1,
        double p2,
        double k3) {

    private static final int MOST_STEPS = 30;
    private static final double CLOSE_ENOUGH = 1e-10;

    public Lens {
        if (width < 16 || height < 16 || width > 8192 || height > 8192) {
            throw new IllegalArgumentException(
                    "a picture measures 16 to 8192 pixels each way: " + width + " x " + height);
        }
        if (!(fx > 0 && fy > 0 && Double.isFinite(fx) && Double.isFinite(fy))) {
            throw new IllegalArgumentException("focal lengths must be above 0: " + fx + ", " + fy);
        }
        for (double value : new double[] {cx, cy, k1, k2, p1, p2, k3}) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("every figure of a lens must be finite: " + value);
            }
        }
    }

    /** Square pixels, centred principal point, the horizontal field of view in degrees, barrel distortion k1. */
    public static Lens ofFieldOfView(int width, int height, double degrees, double k1) {
        double f = width / 2.0 / Math.tan(Math.toRadians(degrees) / 2);
        return new Lens(width, height, f, f, (width - 1) / 2.0, (height - 1) / 2.0, k1, 0, 0, 0, 0);
    }

    /** The same lens with both focal lengths multiplied. */
    public Lens zoomed(double factor) {
        return new Lens(width, height, fx * factor, fy * factor, cx, cy, k1, k2, p1, p2, k3);
    }

    /**
     * Whether a ray lies where the distortion still grows with the angle; beyond that the polynomial folds back and a
     * point behind the fold would show up inside the picture.
     */
    public boolean accepts(double x, double y) {
        double r2 = x * x + y * y;
        return 1 + r2 * (3 * k1 + r2 * (5 * k2 + r2 * 7 * k3)) > 0.05;
    }

    /** Pixel column of a normalised ray (x / z, y / z). */
    public double pixelX(double x, double y) {
        double r2 = x * x + y * y;
        double s = 1 + r2 * (k1 + r2 * (k2 + r2 * k3));
        return fx * (x * s + 2 * p1 * x * y + p2 * (r2 + 2 * x * x)) + cx;
    }

    /** Pixel row of a normalised ray (x / z, y / z). */
    public double pixelY(double x, double y) {
        double r2 = x * x + y * y;
        double s = 1 + r2 * (k1 + r2 * (k2 + r2 * k3));
        return fy * (y * s + p1 * (r2 + 2 * y * y) + 2 * p2 * x * y) + cy;
    }

    /**
     * The normalised ray through a pixel, by fixed-point iteration on the distortion.
     *
     * @param out receives x / z and y / z
     */
    public void ray(double u, double v, double[] out) {
        double xd = (u - cx) / fx;
        double yd = (v - cy) / fy;
        double x = xd;
        double y = yd;
        for (int step = 0; step < MOST_STEPS; step++) {
            double r2 = x * x + y * y;
            double s = 1 + r2 * (k1 + r2 * (k2 + r2 * k3));
            double nextX = (xd - 2 * p1 * x * y - p2 * (r2 + 2 * x * x)) / s;
            double nextY = (yd - p1 * (r2 + 2 * y * y) - 2 * p2 * x * y) / s;
            double change = Math.abs(nextX - x) + Math.abs(nextY - y);
            x = nextX;
            y = nextY;
            if (change < CLOSE_ENOUGH) {
                break;
            }
        }
        out[0] = x;
        out[1] = y;
    }
}
