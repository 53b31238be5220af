package floorgauge.court.track;

import java.util.List;

/**
 * A person's joints in the picture.
 *
 * @param keypoints one for each {@link Joint}, in its order
 */
public record Pose(List<Keypoint> keypoints) {

    public Pose {
        keypoints = List.copyOf(keypoints);
        if (keypoints.size() != Joint.values().length) {
            throw new IllegalArgumentException(
                    "a pose has " + Joint.values().length + " joints, not " + keypoints.size());
        }
    }

    public Keypoint at(Joint joint) {
        return keypoints.get(joint.ordinal());
    }
}
