package floorgauge.vision.ball;

import floorgauge.vision.network.BallSighting;
import java.util.List;

/**
 * What looked like a ball in one frame.
 *
 * @param frame index in presentation order
 * @param timeSeconds presentation time
 * @param seen best first, in the film's own pixels; empty where nothing did
 */
public record BallLook(long frame, double timeSeconds, List<BallSighting> seen) {

    public BallLook {
        seen = List.copyOf(seen);
    }
}
