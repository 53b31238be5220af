package floorgauge.events.statistics;

import floorgauge.court.floor.FloorCovariance;

/**
 * The probability that a Gaussian vector in the plane is no longer than a radius: for a difference of positions, that two
 * players are within a distance; for a velocity, that a player is no faster than a speed.
 *
 * <p>The plain normal approximation of a length is off where the error is as large as the length; this is not. In the
 * principal axes, with h = sqrt(r^2 - u^2),
 *
 * <pre>
 * P = integral over u in (-r, r) of phi((u - a) / s) / s  (Phi((h - b) / t) - Phi((-h - b) / t))
 * </pre>
 *
 * by Gauss-Legendre quadrature over the stretch in which the first factor matters.
 */
public final class GaussianDisc {

    private static final double FAR_DEVIATIONS = 7;
    private static final double LEAST_DEVIATION = 1e-6;
    private static final int NODES = 32;
    private static final double[] X = new double[NODES];
    private static final double[] W = new double[NODES];

    static {
        for (int i = 0; i < NODES; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (NODES + 0.5));
            double slope = 1;
            for (int iteration = 0; iteration < 50; iteration++) {
                double p0 = 1;
                double p1 = x;
                for (int k = 2; k <= NODES; k++) {
                    double p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
                    p0 = p1;
                    p1 = p2;
                }
                slope = NODES * (x * p1 - p0) / (x * x - 1);
                double step = p1 / slope;
                x -= step;
                if (Math.abs(step) < 1e-15) {
                    break;
                }
            }
            X[i] = x;
            W[i] = 2 / ((1 - x * x) * slope * slope);
        }
    }

    private GaussianDisc() {}

    /**
     * @param mx mean along x
     * @param my mean along y
     * @param covariance of the vector
     * @param radius at least 0
     * @return probability that the vector's length is at most the radius
     */
    public static double within(double mx, double my, FloorCovariance covariance, double radius) {
        double half = (covariance.xx() - covariance.yy()) / 2;
        double mean = (covariance.xx() + covariance.yy()) / 2;
        double spread = Math.hypot(half, covariance.xy());
        double s = Math.max(Math.sqrt(mean + spread), LEAST_DEVIATION);
        double t = Math.max(Math.sqrt(Math.max(0, mean - spread)), LEAST_DEVIATION);
        double length = Math.hypot(mx, my);
        if (Math.abs(length - radius) > FAR_DEVIATIONS * s) {
            return length < radius ? 1 : 0;
        }
        double angle = Math.atan2(covariance.xy(), half) / 2;
        double a = mx * Math.cos(angle) + my * Math.sin(angle);
        double b = my * Math.cos(angle) - mx * Math.sin(angle);
        double from = Math.max(-radius, a - FAR_DEVIATIONS * s);
        double to = Math.min(radius, a + FAR_DEVIATIONS * s);
        if (!(to > from)) {
            return 0;
        }
        double sum = 0;
        for (int i = 0; i < NODES; i++) {
            double u = (from + to) / 2 + (to - from) / 2 * X[i];
            double h = Math.sqrt(Math.max(0, radius * radius - u * u));
            double across = Normal.cumulative((h - b) / t) - Normal.cumulative((-h - b) / t);
            sum += W[i] * Normal.density((u - a) / s) / s * across;
        }
        return Math.min(1, Math.max(0, sum * (to - from) / 2));
    }
}
