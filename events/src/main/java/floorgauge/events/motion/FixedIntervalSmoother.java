package floorgauge.events.motion;

import java.util.ArrayList;
import java.util.List;

/**
 * Forward Kalman filter and backward smoother over one stretch of observations, under {@link IntegratedWiener}.
 *
 * <p>The backward pass is the modified Bryson-Frazier form of the Rauch-Tung-Striebel smoother (Rauch, Tung, Striebel,
 * 1965; Bierman, Fixed Interval Smoothing with Discrete Measurements, 1973): with C = I - K H,
 *
 * <pre>
 * at an observation   L := H' S^-1 H + C' L C     l := -H' S^-1 v + C' l
 * back over a step    L := F' L F                 l := F' l
 * smoothed            x := x- - P- l              P := P- - P- L P-
 * </pre>
 *
 * It gives the same numbers and needs no inverse larger than the observation. Not safe for use by several threads.
 */
final class FixedIntervalSmoother {

    private static final double SAME_INSTANT = 1e-9;

    private final IntegratedWiener model;
    private final int n;
    private final int axes;
    private final List<SmootherStep> steps = new ArrayList<>();

    /**
     * @param time of the first instant
     * @param state prior at it, not changed
     * @param covariance row-major prior covariance, not changed
     */
    FixedIntervalSmoother(IntegratedWiener model, double time, double[] state, double[] covariance) {
        this.model = model;
        this.n = model.size();
        this.axes = model.axes();
        steps.add(new SmootherStep(time, state.clone(), covariance.clone()));
    }

    List<SmootherStep> steps() {
        return steps;
    }

    double lastTime() {
        return last().time;
    }

    /** Asks for the state at an instant not before the last one. */
    void want(double time) {
        advance(time);
        last().wanted = true;
    }

    /** Squared Mahalanobis distance of an observation from its prediction, at an instant not before the last one. */
    double squaredInnovation(double time, double[] z, double[] noise) {
        advance(time);
        double[] v = innovation(z);
        double[] inverse = inverse(innovationCovariance(noise));
        double sum = 0;
        for (int i = 0; i < axes; i++) {
            for (int j = 0; j < axes; j++) {
                sum += v[i] * inverse[i * axes + j] * v[j];
            }
        }
        return sum;
    }

    /**
     * Takes an observation in.
     *
     * @param z position, one for each axis
     * @param noise its row-major covariance, positive definite
     */
    void observe(double time, double[] z, double[] noise) {
        advance(time);
        SmootherStep step = last();
        if (step.observed) {
            throw new IllegalArgumentException("two observations at " + time + " s");
        }
        int order = model.order();
        double[] p = step.predictedCovariance;
        step.observed = true;
        step.innovation = innovation(z);
        step.inverseInnovation = inverse(innovationCovariance(noise));
        step.gain = new double[n * axes];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < axes; j++) {
                double sum = 0;
                for (int k = 0; k < axes; k++) {
                    sum += p[i * n + k * order] * step.inverseInnovation[k * axes + j];
                }
                step.gain[i * axes + j] = sum;
            }
        }
        step.state = step.predicted.clone();
        step.covariance = p.clone();
        for (int i = 0; i < n; i++) {
            for (int a = 0; a < axes; a++) {
                double k = step.gain[i * axes + a];
                step.state[i] += k * step.innovation[a];
                for (int j = 0; j < n; j++) {
                    step.covariance[i * n + j] -= k * p[a * order * n + j];
                }
            }
        }
        symmetrise(step.covariance);
    }

    /** Makes the steps with an index below {@code end} carry smoothed states where they are wanted, using all steps. */
    void smooth(int end) {
        double[] l = new double[n];
        double[] information = new double[n * n];
        double[] scratch = new double[n * n];
        for (int k = steps.size() - 1; k >= 0; k--) {
            SmootherStep step = steps.get(k);
            if (step.observed) {
                takeBack(step, l, information, scratch);
            }
            if (k < end && step.wanted) {
                correct(step, l, information, scratch);
            }
            if (k > 0) {
                double dt = step.time - steps.get(k - 1).time;
                model.retreat(l, dt);
                model.retreatInformation(information, dt);
            }
        }
    }

    /** Forgets the steps with an index below {@code end}; at least one must stay. */
    void forget(int end) {
        steps.subList(0, end).clear();
    }

    /** Forgets the steps with an index from {@code start} on. */
    void cutOff(int start) {
        steps.subList(start, steps.size()).clear();
    }

    private SmootherStep last() {
        return steps.get(steps.size() - 1);
    }

    private void advance(double time) {
        SmootherStep before = last();
        double dt = time - before.time;
        if (dt < -SAME_INSTANT) {
            throw new IllegalArgumentException("time runs backwards: " + time + " s after " + before.time + " s");
        }
        if (dt <= SAME_INSTANT) {
            return;
        }
        double[] x = before.state.clone();
        double[] p = before.covariance.clone();
        model.advance(x, dt);
        model.advanceCovariance(p, dt);
        steps.add(new SmootherStep(time, x, p));
    }

    private double[] innovation(double[] z) {
        double[] v = new double[axes];
        for (int a = 0; a < axes; a++) {
            v[a] = z[a] - last().predicted[a * model.order()];
        }
        return v;
    }

    private double[] innovationCovariance(double[] noise) {
        double[] s = noise.clone();
        for (int i = 0; i < axes; i++) {
            for (int j = 0; j < axes; j++) {
                s[i * axes + j] += last().predictedCovariance[i * model.order() * n + j * model.order()];
            }
        }
        return s;
    }

    private double[] inverse(double[] s) {
        if (axes == 1) {
            return new double[] {1 / s[0]};
        }
        if (axes == 2) {
            double determinant = s[0] * s[3] - s[1] * s[2];
            return new double[] {s[3] / determinant, -s[1] / determinant, -s[2] / determinant, s[0] / determinant};
        }
        throw new IllegalArgumentException("one or two axes: " + axes);
    }

    /** L := H' S^-1 H + C' L C and l := -H' S^-1 v + C' l, with C = I - K H. */
    private void takeBack(SmootherStep step, double[] l, double[] information, double[] scratch) {
        int order = model.order();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                scratch[i * n + j] = information[i * n + j];
            }
            for (int a = 0; a < axes; a++) {
                double sum = 0;
                for (int k = 0; k < n; k++) {
                    sum += information[i * n + k] * step.gain[k * axes + a];
                }
                scratch[i * n + a * order] -= sum;
            }
        }
        System.arraycopy(scratch, 0, information, 0, n * n);
        for (int a = 0; a < axes; a++) {
            for (int j = 0; j < n; j++) {
                double sum = 0;
                for (int k = 0; k < n; k++) {
                    sum += step.gain[k * axes + a] * scratch[k * n + j];
                }
                information[a * order * n + j] -= sum;
            }
        }
        double[] gained = new double[axes];
        for (int a = 0; a < axes; a++) {
            for (int k = 0; k < n; k++) {
                gained[a] += step.gain[k * axes + a] * l[k];
            }
        }
        for (int a = 0; a < axes; a++) {
            double pull = 0;
            for (int b = 0; b < axes; b++) {
                pull += step.inverseInnovation[a * axes + b] * step.innovation[b];
                information[a * order * n + b * order] += step.inverseInnovation[a * axes + b];
            }
            l[a * order] -= gained[a] + pull;
        }
    }

    private void correct(SmootherStep step, double[] l, double[] information, double[] scratch) {
        double[] p = step.predictedCovariance;
        multiply(p, information, scratch);
        double[] x = step.predicted.clone();
        double[] covariance = p.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                x[i] -= p[i * n + k] * l[k];
                double w = scratch[i * n + k];
                for (int j = 0; j < n; j++) {
                    covariance[i * n + j] -= w * p[k * n + j];
                }
            }
        }
        symmetrise(covariance);
        step.state = x;
        step.covariance = covariance;
    }

    private void multiply(double[] a, double[] b, double[] into) {
        java.util.Arrays.fill(into, 0, n * n, 0);
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                double v = a[i * n + k];
                for (int j = 0; j < n; j++) {
                    into[i * n + j] += v * b[k * n + j];
                }
            }
        }
    }

    private void symmetrise(double[] p) {
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double mean = (p[i * n + j] + p[j * n + i]) / 2;
                p[i * n + j] = mean;
                p[j * n + i] = mean;
            }
        }
    }
}
