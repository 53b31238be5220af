package floorgauge.sampleclips.truth;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.sampleclips.scene.PersonState;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One person in one frame.
 *
 * @param state position, velocity, facing and action in the middle of the exposure
 * @param box around the whole body, hidden parts too; may reach beyond the picture; empty where the body is wholly out of
 *     the picture
 * @param visibleFraction visible pixels over the pixels that the whole body would cover, parts beyond the picture counted
 *     by the share of the box, 0 to 1
 * @param joints one for each {@link Joint}, in its order
 */
public record PersonTruth(PersonState state, Optional<ImageBox> box, double visibleFraction, List<JointTruth> joints) {

    public PersonTruth {
        Objects.requireNonNull(state, "state");
        Objects.requireNonNull(box, "box");
        joints = List.copyOf(joints);
        if (joints.size() != Joint.values().length) {
            throw new IllegalArgumentException("a body has " + Joint.values().length + " joints, not " + joints.size());
        }
        if (!(visibleFraction >= 0 && visibleFraction <= 1)) {
            throw new IllegalArgumentException("a fraction lies in 0 to 1: " + visibleFraction);
        }
    }

    public JointTruth at(Joint joint) {
        return joints.get(joint.ordinal());
    }
}
