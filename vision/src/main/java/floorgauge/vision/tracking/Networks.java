package floorgauge.vision.tracking;

import floorgauge.vision.network.BallDetector;
import floorgauge.vision.network.DetectorSettings;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.NumberReader;
import floorgauge.vision.network.PersonDetector;
import floorgauge.vision.network.PoseEstimator;
import floorgauge.vision.network.PoseQuality;
import floorgauge.vision.network.Precision;

/**
 * The networks of one thread.
 *
 * @param people where people are
 * @param poses how they stand
 * @param numbers what is on their jerseys
 * @param balls where balls are
 */
record Networks(PersonDetector people, PoseEstimator poses, NumberReader numbers, BallDetector balls)
        implements AutoCloseable {

    /**
     * Loads them.
     *
     * @param precision in which all but the reader of numbers are computed
     * @throws floorgauge.vision.network.NetworkException if one is missing or damaged
     */
    static Networks load(ModelFolder models, Precision precision, DetectorSettings detector, double leastBallScore) {
        return new Networks(
                new PersonDetector(models, detector, precision),
                new PoseEstimator(models, PoseQuality.FAST, precision),
                new NumberReader(models),
                new BallDetector(models, leastBallScore, precision));
    }

    @Override
    public void close() {
        balls.close();
        numbers.close();
        poses.close();
        people.close();
    }
}
