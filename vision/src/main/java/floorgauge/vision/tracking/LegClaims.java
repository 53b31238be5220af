package floorgauge.vision.tracking;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Settles whose leg it is where two people were given the same: behind a screener stands a defender whose legs are out of
 * sight, and the pose network gives him the screener's. A leg belongs to whoever stands nearer the camera, whose box ends
 * lower; the other's joint is not seen.
 */
final class LegClaims {

    /** Joints this near each other, over the height of the smaller box, are one person's. */
    private static final double SAME_JOINT = 0.06;

    private static final Set<Joint> LEGS =
            EnumSet.of(Joint.LEFT_KNEE, Joint.RIGHT_KNEE, Joint.LEFT_ANKLE, Joint.RIGHT_ANKLE);

    private LegClaims() {}

    /** The same people in the same order, no leg given twice. */
    static List<PoseClaims.Claim> settled(List<PoseClaims.Claim> claims) {
        List<PoseClaims.Claim> result = new ArrayList<>();
        for (PoseClaims.Claim claim : claims) {
            result.add(claim.pose().isEmpty() ? claim : without(claim, claims));
        }
        return result;
    }

    private static PoseClaims.Claim without(PoseClaims.Claim claim, List<PoseClaims.Claim> all) {
        ImageBox box = claim.detection().box();
        List<Keypoint> joints = new ArrayList<>(claim.pose().orElseThrow().keypoints());
        for (PoseClaims.Claim other : all) {
            ImageBox nearer = other.detection().box();
            if (other.pose().isEmpty() || nearer.bottom() <= box.bottom() || box.intersectionArea(nearer) <= 0) {
                continue;
            }
            double near = SAME_JOINT * Math.min(box.height(), nearer.height());
            for (Joint joint : LEGS) {
                Keypoint own = joints.get(joint.ordinal());
                if (isOneOf(own, joint, other.pose().get(), near)) {
                    joints.set(joint.ordinal(), new Keypoint(own.position(), 0));
                }
            }
        }
        return new PoseClaims.Claim(claim.detection(), Optional.of(new Pose(joints)));
    }

    /** Left and right may be changed over. */
    private static boolean isOneOf(Keypoint own, Joint joint, Pose other, double near) {
        boolean ankle = joint == Joint.LEFT_ANKLE || joint == Joint.RIGHT_ANKLE;
        Keypoint left = other.at(ankle ? Joint.LEFT_ANKLE : Joint.LEFT_KNEE);
        Keypoint right = other.at(ankle ? Joint.RIGHT_ANKLE : Joint.RIGHT_KNEE);
        return own.score() > 0
                && (own.score() <= left.score() && own.position().distanceTo(left.position()) <= near
                        || own.score() <= right.score() && own.position().distanceTo(right.position()) <= near);
    }
}
