package floorgauge.vision.ball;

import floorgauge.vision.network.BallSighting;
import java.util.Objects;

/**
 * One place on the ball's way through the film.
 *
 * @param look index of the look, from 0
 * @param frame index of the frame
 * @param timeSeconds presentation time
 * @param sighting where, how large and how sure
 */
record BallPoint(int look, long frame, double timeSeconds, BallSighting sighting) {

    BallPoint {
        Objects.requireNonNull(sighting, "sighting");
    }
}
