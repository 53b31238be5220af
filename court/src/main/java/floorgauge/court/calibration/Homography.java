package floorgauge.court.calibration;

import java.util.Arrays;

/**
 * A plane-to-plane projective map, {@code (u, v, 1) ~ H (x, y, 1)}, up to scale. Immutable.
 *
 * <p>Source: Hartley and Zisserman, Multiple View Geometry in Computer Vision (2nd edition, 2004), section 2.3.
 */
public final class Homography {

    private final double[] h;

    private Homography(double[] h) {
        this.h = h;
    }

    /**
     * @param rowMajor nine finite entries, row by row, of a matrix that can be inverted
     * @throws IllegalArgumentException where they are not
     */
    public static Homography of(double... rowMajor) {
        if (rowMajor.length != 9) {
            throw new IllegalArgumentException("a homography has nine entries, not " + rowMajor.length);
        }
        for (double entry : rowMajor) {
            if (!Double.isFinite(entry)) {
                throw new IllegalArgumentException("a homography must be finite: " + Arrays.toString(rowMajor));
            }
        }
        Homography made = new Homography(rowMajor.clone());
        double determinant = made.determinant();
        if (determinant == 0 || !Double.isFinite(determinant)) {
            throw new IllegalArgumentException("a homography must be invertible: " + Arrays.toString(rowMajor));
        }
        return made;
    }

    /** The map that changes nothing. */
    public static Homography identity() {
        return new Homography(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1});
    }

    /** {@code (x, y)} to {@code (scale (x - x0), scale (y - y0))}. */
    public static Homography similarity(double scale, double x0, double y0) {
        return of(scale, 0, -scale * x0, 0, scale, -scale * y0, 0, 0, 1);
    }

    /** Entry at row and column, each 0 to 2. */
    public double at(int row, int column) {
        return h[3 * row + column];
    }

    /** The nine entries, row by row. */
    public double[] rowMajor() {
        return h.clone();
    }

    /** Horizontal coordinate of the image of (x, y); infinite or not a number on the line that maps to infinity. */
    public double mapX(double x, double y) {
        return (h[0] * x + h[1] * y + h[2]) / weight(x, y);
    }

    /** Vertical coordinate of the image of (x, y); infinite or not a number on the line that maps to infinity. */
    public double mapY(double x, double y) {
        return (h[3] * x + h[4] * y + h[5]) / weight(x, y);
    }

    /** Third homogeneous coordinate of the image of (x, y, 1): its sign tells the two sides of the horizon apart. */
    public double weight(double x, double y) {
        return h[6] * x + h[7] * y + h[8];
    }

    public double determinant() {
        return h[0] * (h[4] * h[8] - h[5] * h[7])
                - h[1] * (h[3] * h[8] - h[5] * h[6])
                + h[2] * (h[3] * h[7] - h[4] * h[6]);
    }

    /** The map back: the adjugate over the determinant. */
    public Homography inverse() {
        double d = determinant();
        return of(
                (h[4] * h[8] - h[5] * h[7]) / d,
                (h[2] * h[7] - h[1] * h[8]) / d,
                (h[1] * h[5] - h[2] * h[4]) / d,
                (h[5] * h[6] - h[3] * h[8]) / d,
                (h[0] * h[8] - h[2] * h[6]) / d,
                (h[2] * h[3] - h[0] * h[5]) / d,
                (h[3] * h[7] - h[4] * h[6]) / d,
                (h[1] * h[6] - h[0] * h[7]) / d,
                (h[0] * h[4] - h[1] * h[3]) / d);
    }

    /** First {@code first}, then this. */
    public Homography after(Homography first) {
        double[] product = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                for (int k = 0; k < 3; k++) {
                    product[3 * row + column] += h[3 * row + k] * first.h[3 * k + column];
                }
            }
        }
        return of(product);
    }

    /** The same map with every entry multiplied by a factor that is not 0. */
    public Homography scaled(double factor) {
        double[] scaled = new double[9];
        for (int i = 0; i < 9; i++) {
            scaled[i] = h[i] * factor;
        }
        return of(scaled);
    }

    /** Square root of the sum of the squared entries. */
    public double norm() {
        double sum = 0;
        for (double entry : h) {
            sum += entry * entry;
        }
        return Math.sqrt(sum);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Homography && Arrays.equals(h, ((Homography) other).h);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(h);
    }

    @Override
    public String toString() {
        return "Homography" + Arrays.toString(h);
    }
}
