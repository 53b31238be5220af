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

    /** Natural logarithm of the normal density, per square metre. */
    double logDensity() {
        return -0.5 * squaredDistance() - Math.log(2 * Math.PI) - 0.5 * Math.log(determinant);
    }
}
