package floorgauge.eval.tracking;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Everyone in one frame.
 *
 * @param frame index of the frame in presentation order, from 0
 * @param timeSeconds presentation time
 * @param sightings each id at most once; empty where nobody is there
 */
public record TrackFrame<T>(long frame, double timeSeconds, List<Sighting<T>> sightings) {

    public TrackFrame {
        sightings = List.copyOf(sightings);
        if (frame < 0) {
            throw new IllegalArgumentException("frames count from 0: " + frame);
        }
        if (!Double.isFinite(timeSeconds)) {
            throw new IllegalArgumentException("time must be finite: " + timeSeconds);
        }
        Set<Integer> ids = new HashSet<>();
        for (Sighting<T> sighting : sightings) {
            if (!ids.add(sighting.id())) {
                throw new IllegalArgumentException("id " + sighting.id() + " stands twice in frame " + frame);
            }
        }
    }
}
