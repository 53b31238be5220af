package floorgauge.vision.tracking;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;

/**
 * How a person moves on the floor: constant velocity driven by white acceleration noise, measured by position.
 *
 * <p>Per axis, after dt seconds: x' = x + v dt, v' = v, with noise q [dt^3/3, dt^2/2; dt^2/2, dt]. A player's
 * acceleration is itself correlated over about a step, so q = 2 s^2 T with its standard deviation s and correlation time T
 * (R. A. Singer, "Estimating optimal tracking filter performance for manned maneuvering targets", 1970, the limit of
 * intervals long against T).
 */
final class FloorMotion {

    private final double spectralDensity;
    private final double initialSpeedDeviation;

    /**
     * @param accelerationDeviation standard deviation of a player's acceleration, m/s2
     * @param correlationSeconds how long an acceleration lasts
     * @param initialSpeedDeviation standard deviation of each velocity component before it was measured, m/s
     */
    FloorMotion(double accelerationDeviation, double correlationSeconds, double initialSpeedDeviation) {
        this.spectralDensity = 2 * accelerationDeviation * accelerationDeviation * correlationSeconds;
        this.initialSpeedDeviation = initialSpeedDeviation;
    }

    /** A person seen once: the position is known, the velocity is only bounded. */
    FloorState start(FloorEstimate seen) {
        double v = initialSpeedDeviation * initialSpeedDeviation;
        FloorCovariance c = seen.covariance();
        return new FloorState(new double[] {seen.mean().xMetres(), seen.mean().yMetres(), 0, 0}, new double[][] {
            {c.xx(), c.xy(), 0, 0}, {c.xy(), c.yy(), 0, 0}, {0, 0, v, 0}, {0, 0, 0, v}
        });
    }

    /** The state {@code seconds} later, at least 0. */
    FloorState predict(FloorState state, double seconds) {
        if (!(seconds >= 0)) {
            throw new IllegalArgumentException("prediction runs forward in time: " + seconds + " s");
        }
        double[] m = state.mean();
        double[][] p = state.covariance();
        double[][] n = new double[FloorState.SIZE][FloorState.SIZE];
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                double crossIj = p[i][j + 2] + seconds * p[i + 2][j + 2];
                double crossJi = p[i + 2][j] + seconds * p[i + 2][j + 2];
                n[i][j] = p[i][j] + seconds * (p[i][j + 2] + p[i + 2][j]) + seconds * seconds * p[i + 2][j + 2];
                n[i][j + 2] = crossIj;
                n[i + 2][j] = crossJi;
                n[i + 2][j + 2] = p[i + 2][j + 2];
            }
            n[i][i] += spectralDensity * seconds * seconds * seconds / 3;
            n[i][i + 2] += spectralDensity * seconds * seconds / 2;
            n[i + 2][i] += spectralDensity * seconds * seconds / 2;
            n[i + 2][i + 2] += spectralDensity * seconds;
        }
        return new FloorState(new double[] {m[0] + seconds * m[2], m[1] + seconds * m[3], m[2], m[3]}, n);
    }

    /** As {@link #update}, but a position far from where it was expected weighs less. */
    FloorState updateRobustly(FloorState state, FloorEstimate seen) {
        double stretch = innovation(state, seen).stretch();
        FloorCovariance c = seen.covariance();
        return update(
                state,
                new FloorEstimate(
                        seen.mean(), new FloorCovariance(stretch * c.xx(), stretch * c.xy(), stretch * c.yy())));
    }

    /** The state after a position was measured at its time. */
    FloorState update(FloorState state, FloorEstimate seen) {
        Innovation innovation = innovation(state, seen);
        double[] m = state.mean();
        double[][] p = state.covariance();
        double[] mean = new double[FloorState.SIZE];
        double[][] gain = new double[FloorState.SIZE][2];
        for (int i = 0; i < FloorState.SIZE; i++) {
            gain[i][0] = p[i][0] * innovation.inverseXx() + p[i][1] * innovation.inverseXy();
            gain[i][1] = p[i][0] * innovation.inverseXy() + p[i][1] * innovation.inverseYy();
            mean[i] = m[i] + gain[i][0] * innovation.dx() + gain[i][1] * innovation.dy();
        }
        return new FloorState(mean, joseph(p, gain, seen.covariance()));
    }

    /** P' = (I - K H) P (I - K H)^T + K R K^T, which stays symmetric and positive in rounding. */
    private static double[][] joseph(double[][] p, double[][] gain, FloorCovariance r) {
        int n = FloorState.SIZE;
        double[][] a = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i][j] = p[i][j] - gain[i][0] * p[0][j] - gain[i][1] * p[1][j];
            }
        }
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                double value = a[i][j]
                        - a[i][0] * gain[j][0]
                        - a[i][1] * gain[j][1]
                        + gain[i][0] * (r.xx() * gain[j][0] + r.xy() * gain[j][1])
                        + gain[i][1] * (r.xy() * gain[j][0] + r.yy() * gain[j][1]);
                result[i][j] = value;
                result[j][i] = value;
            }
        }
        return result;
    }

    /** What a measured position says that the state did not. */
    Innovation innovation(FloorState state, FloorEstimate seen) {
        FloorPoint z = seen.mean();
        double[][] p = state.covariance();
        return Innovation.of(
                z.xMetres() - state.mean()[0],
                z.yMetres() - state.mean()[1],
                p[0][0] + seen.covariance().xx(),
                p[0][1] + seen.covariance().xy(),
                p[1][1] + seen.covariance().yy());
    }
}
