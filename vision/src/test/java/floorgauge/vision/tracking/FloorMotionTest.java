package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.filtering.kalman.Measurement;
import org.hipparchus.filtering.kalman.ProcessEstimate;
import org.hipparchus.filtering.kalman.linear.LinearEvolution;
import org.hipparchus.filtering.kalman.linear.LinearKalmanFilter;
import org.hipparchus.linear.CholeskyDecomposer;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

class FloorMotionTest {

    private static final FloorMotion MOTION = new FloorMotion(3, 0.5, 2);
    private static final double DENSITY = 9;

    @Test
    void noTimeChangesNothing() {
        FloorState state = MOTION.start(new FloorEstimate(new FloorPoint(1, 2), FloorCovariance.isotropic(0.1)));
        FloorState same = MOTION.predict(state, 0);
        assertThat(same.mean()).containsExactly(state.mean());
        assertThat(same.covariance()).isDeepEqualTo(state.covariance());
    }

    @Test
    void timeDoesNotRunBackward() {
        FloorState state = MOTION.start(new FloorEstimate(new FloorPoint(1, 2), FloorCovariance.isotropic(0.1)));
        assertThatThrownBy(() -> MOTION.predict(state, -0.1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void anExactMeasurementIsNoSpecialCase() {
        FloorEstimate exact = new FloorEstimate(new FloorPoint(1, 2), FloorCovariance.isotropic(0));
        FloorState state = MOTION.update(MOTION.start(exact), exact);
        assertThat(state.mean()).containsExactly(1, 2, 0, 0);
        assertThat(StateComparison.logDensity(state, state)).isFinite();
    }

    @Test
    void twoPredictionsAreOneOfTheSumOfTheirTimes() {
        FloorState state = new FloorState(
                new double[] {1, 2, 3, -1},
                new double[][] {{0.2, 0.05, 0.1, 0}, {0.05, 0.3, 0, 0.1}, {0.1, 0, 1, 0.2}, {0, 0.1, 0.2, 2}});
        FloorState once = MOTION.predict(state, 0.7);
        FloorState twice = MOTION.predict(MOTION.predict(state, 0.3), 0.4);
        for (int i = 0; i < 4; i++) {
            assertThat(twice.mean()[i]).isCloseTo(once.mean()[i], within(1e-12));
            for (int j = 0; j < 4; j++) {
                assertThat(twice.covariance()[i][j]).isCloseTo(once.covariance()[i][j], within(1e-12));
            }
        }
    }

    /** Against Hipparchus' linear Kalman filter (hipparchus-filtering 4.0.3) on a random walk with correlated errors. */
    @Test
    void agreesWithHipparchus() {
        long seed = 7;
        Random random = new Random(seed);
        List<Seen> track = new ArrayList<>();
        double t = 0;
        for (int i = 0; i < 60; i++) {
            double sx = 0.05 + random.nextDouble();
            double sy = 0.05 + random.nextDouble();
            FloorCovariance r = new FloorCovariance(sx * sx, 0.6 * sx * sy, sy * sy);
            track.add(new Seen(t, new FloorEstimate(new FloorPoint(t + random.nextGaussian(), Math.sin(t)), r)));
            t += 0.02 + 0.1 * random.nextDouble();
        }
        FloorState ours = MOTION.start(track.get(0).position());
        LinearKalmanFilter<Seen> theirs = hipparchus(ours);
        for (int i = 1; i < track.size(); i++) {
            Seen seen = track.get(i);
            ours = MOTION.update(
                    MOTION.predict(ours, seen.time() - track.get(i - 1).time()), seen.position());
            ProcessEstimate estimate = theirs.estimationStep(seen);
            for (int k = 0; k < 4; k++) {
                assertThat(ours.mean()[k])
                        .as("seed %d, step %d", seed, i)
                        .isCloseTo(estimate.getState().getEntry(k), within(1e-8));
                assertThat(ours.covariance()[k][k])
                        .as("seed %d, step %d", seed, i)
                        .isCloseTo(estimate.getCovariance().getEntry(k, k), within(1e-8));
            }
        }
    }

    @Test
    void twoEstimatesOfOneStateFuseToTheirWeightedMean() {
        FloorState a = isotropic(0, 1);
        FloorState b = isotropic(3, 2);
        FloorState both = StateComparison.fuse(a, b);
        assertThat(both.mean()[0]).isCloseTo(1, within(1e-6));
        assertThat(both.covariance()[0][0]).isCloseTo(2.0 / 3, within(1e-6));
    }

    private static FloorState isotropic(double value, double variance) {
        double[][] c = new double[4][4];
        for (int i = 0; i < 4; i++) {
            c[i][i] = variance;
        }
        return new FloorState(new double[] {value, value, value, value}, c);
    }

    private record Seen(double time, FloorEstimate position) implements Measurement {
        @Override
        public double getTime() {
            return time;
        }

        @Override
        public RealVector getValue() {
            return MatrixUtils.createRealVector(
                    new double[] {position.mean().xMetres(), position.mean().yMetres()});
        }

        @Override
        public RealMatrix getCovariance() {
            FloorCovariance c = position.covariance();
            return MatrixUtils.createRealMatrix(new double[][] {{c.xx(), c.xy()}, {c.xy(), c.yy()}});
        }
    }

    private static LinearKalmanFilter<Seen> hipparchus(FloorState start) {
        RealMatrix h = MatrixUtils.createRealMatrix(new double[][] {{1, 0, 0, 0}, {0, 1, 0, 0}});
        double[] last = {0};
        return new LinearKalmanFilter<>(
                new CholeskyDecomposer(1e-15, 1e-15),
                measurement -> {
                    double dt = measurement.getTime() - last[0];
                    last[0] = measurement.getTime();
                    RealMatrix a = MatrixUtils.createRealIdentityMatrix(4);
                    a.setEntry(0, 2, dt);
                    a.setEntry(1, 3, dt);
                    RealMatrix q = MatrixUtils.createRealMatrix(4, 4);
                    for (int i = 0; i < 2; i++) {
                        q.setEntry(i, i, DENSITY * dt * dt * dt / 3);
                        q.setEntry(i, i + 2, DENSITY * dt * dt / 2);
                        q.setEntry(i + 2, i, DENSITY * dt * dt / 2);
                        q.setEntry(i + 2, i + 2, DENSITY * dt);
                    }
                    return new LinearEvolution(
                            a, MatrixUtils.createRealMatrix(4, 1), MatrixUtils.createRealVector(new double[1]), q, h);
                },
                new ProcessEstimate(
                        0,
                        MatrixUtils.createRealVector(start.mean()),
                        MatrixUtils.createRealMatrix(start.covariance())));
    }
}
