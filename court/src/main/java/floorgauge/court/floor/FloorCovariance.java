package floorgauge.court.floor;

/**
 * A symmetric, positive semi-definite 2x2 covariance on the floor, in square metres.
 *
 * @param xx variance along x
 * @param xy covariance of x and y
 * @param yy variance along y
 */
public record FloorCovariance(double xx, double xy, double yy) {

    /** Determinants a rounding error below zero are let through; see {@link #FloorCovariance}. */
    private static final double RELATIVE_SLACK = 1e-9;

    public FloorCovariance {
        if (!Double.isFinite(xx) || !Double.isFinite(xy) || !Double.isFinite(yy)) {
            throw new IllegalArgumentException("covariance must be finite: " + xx + ", " + xy + ", " + yy);
        }
        if (xx < 0 || yy < 0 || xy * xy > xx * yy * (1 + RELATIVE_SLACK) + Double.MIN_NORMAL) {
            throw new IllegalArgumentException(
                    "covariance must be positive semi-definite: " + xx + ", " + xy + ", " + yy);
        }
    }

    /** The same standard deviation in every direction. */
    public static FloorCovariance isotropic(double standardDeviationMetres) {
        double variance = standardDeviationMetres * standardDeviationMetres;
        return new FloorCovariance(variance, 0, variance);
    }

    /** The covariance of the sum of two independent errors. */
    public FloorCovariance plus(FloorCovariance other) {
        return new FloorCovariance(xx + other.xx, xy + other.xy, yy + other.yy);
    }

    /** The variance, in square metres, along the direction (dx, dy), which must not be zero. */
    public double varianceAlong(double dx, double dy) {
        double squaredLength = dx * dx + dy * dy;
        if (!(squaredLength > 0)) {
            throw new IllegalArgumentException("direction must not be zero");
        }
        return Math.max(0, (xx * dx * dx + 2 * xy * dx * dy + yy * dy * dy) / squaredLength);
    }

    /** Square root of the mean of the two principal variances, in metres: one figure for a caption. */
    public double standardErrorMetres() {
        return Math.sqrt((xx + yy) / 2);
    }
}
