package floorgauge.vision.tracking;

import floorgauge.court.track.ImageBox;
import java.util.Objects;

/**
 * A box that the detector gave, and what became of it.
 *
 * @param frame index
 * @param timeSeconds presentation time
 * @param box in the film's pixels
 * @param score the detector's, 0 to 1
 * @param fate and its reason
 * @param track id of the track that it is part of; 0 where it is of none
 */
public record DetectionFate(long frame, double timeSeconds, ImageBox box, double score, Fate fate, int track) {

    public DetectionFate {
        Objects.requireNonNull(box, "box");
        Objects.requireNonNull(fate, "fate");
        if ((fate == Fate.FOLLOWED) != (track > 0)) {
            throw new IllegalArgumentException(
                    "a box is followed exactly where it has a track: " + fate + ", " + track);
        }
    }
}
