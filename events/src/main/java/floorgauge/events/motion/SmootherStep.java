package floorgauge.events.motion;

/** One instant of a {@link FixedIntervalSmoother}: the filter's prediction, its update, and later the smoothed state. */
final class SmootherStep {

    final double time;
    /** Prediction before this instant's observation. */
    final double[] predicted;
    /** Its row-major covariance. */
    final double[] predictedCovariance;
    /** Whether the state is wanted at this instant. */
    boolean wanted;
    /** Whether an observation was taken in. */
    boolean observed;
    /** Innovation, one for each axis. */
    double[] innovation;
    /** Row-major inverse of the innovation's covariance. */
    double[] inverseInnovation;
    /** Row-major gain, size by axes. */
    double[] gain;
    /** Filtered state and, after {@link FixedIntervalSmoother#smooth}, the smoothed one. */
    double[] state;
    /** Its row-major covariance. */
    double[] covariance;

    SmootherStep(double time, double[] predicted, double[] predictedCovariance) {
        this.time = time;
        this.predicted = predicted;
        this.predictedCovariance = predictedCovariance;
        this.state = predicted;
        this.covariance = predictedCovariance;
    }
}
