package floorgauge.vision.tracking;

import java.util.List;

/**
 * Everyone on the floor in one frame.
 *
 * @param frame index
 * @param timeSeconds presentation time
 * @param seen best first
 * @param dropped boxes of nobody on the floor
 */
record Look(long frame, double timeSeconds, List<Sighting> seen, List<DetectionFate> dropped) {

    Look {
        seen = List.copyOf(seen);
        dropped = List.copyOf(dropped);
    }
}
