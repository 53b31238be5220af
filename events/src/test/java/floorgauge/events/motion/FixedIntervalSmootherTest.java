package floorgauge.events.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.filtering.kalman.KalmanSmoother;
import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.linear.LinearEvolution;
import org.hipparchus.filtering.kalman.linear.LinearKalmanFilter;
import org.hipparchus.linear.CholeskyDecomposer;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

class FixedIntervalSmootherTest {

    private static final long SEED = 20261124;
    private static final double DENSITY = 20;

    private record Seen(double time, double[] z, double[] noise) implements Measurement {
        @Override
        public double getTime() {
            return time;
        }

        @Override
        public RealVector getValue() {
            return MatrixUtils.createRealVector(z);
        }

        @Override
        public RealMatrix getCovariance() {
            return MatrixUtils.createRealMatrix(new double[][] {{noise[0], noise[1]}, {noise[2], noise[3]}});
        }
    }

    @Test
    void oneObservationIsGivenBack() {
        FixedIntervalSmoother smoother = new FixedIntervalSmoother(
                new IntegratedWiener(3, 2, DENSITY), 0, new double[6], diagonal(new double[] {1, 9, 9, 1, 9, 9}));
        smoother.want(0);
        smoother.observe(0, new double[] {2, 4}, new double[] {1, 0, 0, 1});
        smoother.smooth(1);
        assertThat(smoother.steps().get(0).state[0]).isCloseTo(1, within(1e-12));
        assertThat(smoother.steps().get(0).state[3]).isCloseTo(2, within(1e-12));
        assertThat(smoother.steps().get(0).covariance[0]).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void timeMayNotRunBackwards() {
        FixedIntervalSmoother smoother =
                new FixedIntervalSmoother(new IntegratedWiener(1, 1, 1), 5, new double[1], new double[] {1});
        assertThatThrownBy(() -> smoother.want(4)).hasMessageContaining("backwards");
    }

    /** Hipparchus 4.0.3, LinearKalmanFilter and KalmanSmoother (Rauch-Tung-Striebel), is the reference. */
    @Test
    void agreesWithHipparchusOnRandomTracks() {
        Random random = new Random(SEED);
        List<Seen> seen = new ArrayList<>();
        double time = 0;
        for (int i = 0; i < 60; i++) {
            time += 0.02 + random.nextDouble() * (i == 30 ? 1 : 0.05);
            double a = 0.01 + random.nextDouble() * 0.05;
            double b = 0.01 + random.nextDouble() * 0.05;
            double c = (random.nextDouble() - 0.5) * Math.sqrt(a * b);
            double outlier = i == 20 ? 3 : 0;
            seen.add(new Seen(
                    time,
                    new double[] {Math.sin(time) + 0.1 * random.nextGaussian() + outlier, 2 * time},
                    new double[] {a, c, c, b}));
        }
        double[] prior = diagonal(new double[] {4, 9, 9, 4, 9, 9});
        FixedIntervalSmoother ours =
                new FixedIntervalSmoother(new IntegratedWiener(3, 2, DENSITY), 0, new double[6], prior);
        for (Seen s : seen) {
            ours.want(s.time());
            ours.observe(s.time(), s.z(), s.noise());
        }
        ours.smooth(ours.steps().size());
        List<ProcessEstimate> theirs = hipparchus(seen, prior);

        for (int k = 0; k < seen.size(); k++) {
            ProcessEstimate reference = theirs.get(theirs.size() - seen.size() + k);
            SmootherStep step = ours.steps().get(k + 1);
            assertThat(step.time).as("seed " + SEED).isEqualTo(reference.getTime());
            for (int i = 0; i < 6; i++) {
                assertThat(step.state[i])
                        .as("seed %d, step %d, state %d", SEED, k, i)
                        .isCloseTo(reference.getState().getEntry(i), within(1e-6));
                for (int j = 0; j < 6; j++) {
                    assertThat(step.covariance[i * 6 + j])
                            .as("seed %d, step %d, covariance %d %d", SEED, k, i, j)
                            .isCloseTo(reference.getCovariance().getEntry(i, j), within(1e-6));
                }
            }
        }
    }

    private static List<ProcessEstimate> hipparchus(List<Seen> seen, double[] prior) {
        RealMatrix p = MatrixUtils.createRealMatrix(6, 6);
        for (int i = 0; i < 6; i++) {
            p.setEntry(i, i, prior[i * 7]);
        }
        CholeskyDecomposer decomposer = new CholeskyDecomposer(1e-12, 1e-14);
        ProcessEstimate initial = new ProcessEstimate(0, MatrixUtils.createRealVector(6), p);
        LinearKalmanFilter<Seen> filter = new LinearKalmanFilter<>(decomposer, new Process(), initial);
        KalmanSmoother smoother = new KalmanSmoother(decomposer);
        filter.setObserver(smoother);
        seen.forEach(filter::estimationStep);
        return smoother.backwardsSmooth();
    }

    private static final class Process implements org.hipparchus.filtering.kalman.linear.LinearProcess<Seen> {
        private double before;

        @Override
        public LinearEvolution getEvolution(Seen seen) {
            double dt = seen.time() - before;
            before = seen.time();
            RealMatrix f = MatrixUtils.createRealIdentityMatrix(6);
            RealMatrix q = MatrixUtils.createRealMatrix(6, 6);
            double[][] noise = {
                {Math.pow(dt, 5) / 20, Math.pow(dt, 4) / 8, Math.pow(dt, 3) / 6},
                {Math.pow(dt, 4) / 8, Math.pow(dt, 3) / 3, dt * dt / 2},
                {Math.pow(dt, 3) / 6, dt * dt / 2, dt}
            };
            for (int o = 0; o < 6; o += 3) {
                f.setEntry(o, o + 1, dt);
                f.setEntry(o, o + 2, dt * dt / 2);
                f.setEntry(o + 1, o + 2, dt);
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 3; j++) {
                        q.setEntry(o + i, o + j, DENSITY * noise[i][j]);
                    }
                }
            }
            RealMatrix h = MatrixUtils.createRealMatrix(2, 6);
            h.setEntry(0, 0, 1);
            h.setEntry(1, 3, 1);
            return new LinearEvolution(f, MatrixUtils.createRealMatrix(6, 1), MatrixUtils.createRealVector(1), q, h);
        }
    }

    private static double[] diagonal(double[] values) {
        double[] p = new double[values.length * values.length];
        for (int i = 0; i < values.length; i++) {
            p[i * values.length + i] = values[i];
        }
        return p;
    }
}
