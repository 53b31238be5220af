package floorgauge.vision.tracking;

/**
 * The difference of a measured and a predicted position, with the inverse of its covariance.
 *
 * @param dx metres, measured less predicted
 * @param dy metres
 * @param inverseXx of the covariance's inverse, per square metre
 * @param inverseXy same
 * @param inverseYy same
 * @param determinant of the covariance, m^4, above 0
 */
record Innovation(double dx, double dy, double inverseXx, double inverseXy, double inverseYy, double determinant) {

    /** Of the t distribution (K. Lange, R. Little and J. Taylor, "Robust statistical modeling using the t distribution", 1989). */
    private static final double FREEDOM = 4;

    /** Squared distance from which a measurement weighs less: chi-square, two degrees of freedom, 0.95 (P. Huber, 1964). */
    private static final double HUBER = 5.99;

    /** Variance added to both axes of a covariance without extent, so that an exact measurement is no special case. */
    private static final double LEAST_VARIANCE = 1e-12;

    static Innovation of(double dx, double dy, double xx, double xy, double yy) {
        double a = xx + LEAST_VARIANCE;
        double c = yy + LEAST_VARIANCE;
        double determinant = Math.max(a * c - xy * xy, LEAST_VARIANCE * LEAST_VARIANCE);
        return new Innovation(dx, dy, c / determinant, -xy / determinant, a / determinant, determinant);
    }

    /** Squared Mahalanobis distance; chi-square with two degrees of freedom where the model holds. */
    double squaredDistance() {
        return dx * dx * inverseXx + 2 * dx * dy * inverseXy + dy * dy * inverseYy;
    }

    /**
     * Natural logarithm of the density, per square metre: Student's t with {@link #FREEDOM} degrees of freedom, since a foot
     * on the wrong leg or a box about two people is not normal. {@code Gamma(f/2 + 1) / (Gamma(f/2) f pi) = 1 / (2 pi)} for
     * two dimensions.
     */
    double logDensity() {
        return -(FREEDOM + 2) / 2 * Math.log1p(squaredDistance() / FREEDOM)
                - Math.log(2 * Math.PI)
                - 0.5 * Math.log(determinant);
    }

    /** By how much the measurement's covariance is to be stretched: one over Huber's weight. */
    double stretch() {
        return Math.max(1, Math.sqrt(squaredDistance() / HUBER));
    }
}
