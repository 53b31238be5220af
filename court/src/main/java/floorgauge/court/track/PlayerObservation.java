package floorgauge.court.track;

import floorgauge.court.floor.FloorEstimate;
import java.util.Objects;
import java.util.Optional;

/**
 * One person in one frame.
 *
 * @param frame index of the frame in presentation order, from 0
 * @param timeSeconds presentation time
 * @param foot where the body stands, court frame
 * @param source what the foot was measured from
 * @param box the person in the picture; empty where only floor positions are known
 * @param pose joints in the picture; empty where the pose network did not run or saw nothing
 * @param body what the pose says on the floor
 * @param score the detector's confidence, 0 to 1; 0 for a predicted position
 */
public record PlayerObservation(
        long frame,
        double timeSeconds,
        FloorEstimate foot,
        FootSource source,
        Optional<ImageBox> box,
        Optional<Pose> pose,
        Body body,
        double score) {

    public PlayerObservation {
        Objects.requireNonNull(foot, "foot");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(box, "box");
        Objects.requireNonNull(pose, "pose");
        Objects.requireNonNull(body, "body");
        if (frame < 0) {
            throw new IllegalArgumentException("frames count from 0: " + frame);
        }
        if (!Double.isFinite(timeSeconds)) {
            throw new IllegalArgumentException("time must be finite: " + timeSeconds);
        }
        if (!(score >= 0 && score <= 1)) {
            throw new IllegalArgumentException("score must lie in 0 to 1: " + score);
        }
    }
}
