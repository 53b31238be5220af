package floorgauge.eval.tracking;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.ImageBox;
import java.util.Objects;
import java.util.Optional;

/**
 * One line of a MOTChallenge text.
 *
 * @param frame index of the frame from 0, whatever the file counts from
 * @param id identity within the film
 * @param box in the picture, pixels of the film as stored; empty where only the floor is known
 * @param confidence the detector's score; -1 in files that do not give one
 * @param floor metres in the court frame; empty where the world columns hold -1
 */
public record MotChallengeRow(
        long frame, int id, Optional<ImageBox> box, double confidence, Optional<FloorPoint> floor) {

    public MotChallengeRow {
        Objects.requireNonNull(box, "box");
        Objects.requireNonNull(floor, "floor");
        if (frame < 0) {
            throw new IllegalArgumentException("frames count from 0: " + frame);
        }
        if (!Double.isFinite(confidence)) {
            throw new IllegalArgumentException("confidence must be finite: " + confidence);
        }
    }
}
