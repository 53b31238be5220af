package floorgauge.events.motion;

/**
 * The motion model: along every axis the highest derivative is a Wiener process, the axes are independent.
 *
 * <p>With {@code m} derivatives from 0 to m - 1 and white noise of spectral density q driving the last, over a step dt
 *
 * <pre>
 * F(i, j) = dt^(j-i) / (j-i)!                                              for j at least i, else 0
 * Q(i, j) = q dt^(2m-1-i-j) / ((2m-1-i-j) (m-1-i)! (m-1-j)!)
 * </pre>
 *
 * Order 1 is the local level model, order 2 constant velocity, order 3 constant acceleration (Bar-Shalom, Li, Kirubarajan,
 * Estimation with Applications to Tracking and Navigation, 2001, section 6.2, from memory). The state holds the
 * derivatives of the first axis, then those of the next.
 */
final class IntegratedWiener {

    private final int order;
    private final int axes;
    private final double density;

    /**
     * @param order derivatives kept for each axis, 1 to 3
     * @param axes at least 1
     * @param density spectral density of the noise, in squared units of the position over seconds to the 2 order - 1
     */
    IntegratedWiener(int order, int axes, double density) {
        if (order < 1 || order > 3 || axes < 1) {
            throw new IllegalArgumentException("order 1 to 3 and at least one axis: " + order + ", " + axes);
        }
        if (!(density > 0)) {
            throw new IllegalArgumentException("density must be above 0: " + density);
        }
        this.order = order;
        this.axes = axes;
        this.density = density;
    }

    int order() {
        return order;
    }

    int axes() {
        return axes;
    }

    int size() {
        return order * axes;
    }

    /** Replaces x by F x. */
    void advance(double[] x, double dt) {
        for (int axis = 0; axis < axes; axis++) {
            int o = axis * order;
            if (order == 3) {
                x[o] += dt * (x[o + 1] + dt / 2 * x[o + 2]);
                x[o + 1] += dt * x[o + 2];
            } else if (order == 2) {
                x[o] += dt * x[o + 1];
            }
        }
    }

    /** Replaces x by F' x. */
    void retreat(double[] x, double dt) {
        for (int axis = 0; axis < axes; axis++) {
            int o = axis * order;
            if (order == 3) {
                x[o + 2] += dt * (x[o + 1] + dt / 2 * x[o]);
                x[o + 1] += dt * x[o];
            } else if (order == 2) {
                x[o + 1] += dt * x[o];
            }
        }
    }

    /** Replaces the row-major p by F p F' + Q. */
    void advanceCovariance(double[] p, double dt) {
        int n = size();
        for (int column = 0; column < n; column++) {
            advanceStrided(p, column, n, dt);
        }
        for (int row = 0; row < n; row++) {
            advanceStrided(p, row * n, 1, dt);
        }
        for (int axis = 0; axis < axes; axis++) {
            for (int i = 0; i < order; i++) {
                for (int j = 0; j < order; j++) {
                    p[(axis * order + i) * n + axis * order + j] += noise(i, j, dt);
                }
            }
        }
    }

    /** Replaces the row-major l by F' l F. */
    void retreatInformation(double[] l, double dt) {
        int n = size();
        for (int column = 0; column < n; column++) {
            retreatStrided(l, column, n, dt);
        }
        for (int row = 0; row < n; row++) {
            retreatStrided(l, row * n, 1, dt);
        }
    }

    private void advanceStrided(double[] a, int start, int stride, double dt) {
        for (int axis = 0; axis < axes; axis++) {
            int o = start + axis * order * stride;
            if (order == 3) {
                a[o] += dt * (a[o + stride] + dt / 2 * a[o + 2 * stride]);
                a[o + stride] += dt * a[o + 2 * stride];
            } else if (order == 2) {
                a[o] += dt * a[o + stride];
            }
        }
    }

    private void retreatStrided(double[] a, int start, int stride, double dt) {
        for (int axis = 0; axis < axes; axis++) {
            int o = start + axis * order * stride;
            if (order == 3) {
                a[o + 2 * stride] += dt * (a[o + stride] + dt / 2 * a[o]);
                a[o + stride] += dt * a[o];
            } else if (order == 2) {
                a[o + stride] += dt * a[o];
            }
        }
    }

    private double noise(int i, int j, double dt) {
        int power = 2 * order - 1 - i - j;
        double power1 = dt;
        for (int k = 1; k < power; k++) {
            power1 *= dt;
        }
        return density * power1 / (power * factorial(order - 1 - i) * factorial(order - 1 - j));
    }

    private static double factorial(int n) {
        return n < 2 ? 1 : n * factorial(n - 1);
    }
}
