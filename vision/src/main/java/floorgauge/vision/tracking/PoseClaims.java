package floorgauge.vision.tracking;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.vision.body.PoseOverlap;
import floorgauge.vision.network.Detection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Settles whose pose it is where two boxes were given the same: the pose network gives the joints of whoever is nearest the
 * middle of a box, who may be the person in front. The box that fits the joints better keeps them. The other is a person
 * whose joints are not known; or, where it lies in the first, a second box about the same person.
 */
final class PoseClaims {

    /** Joints as close as this are one person's. */
    private static final double SAME_POSE = 0.5;

    /** Share of the smaller box that lies in the larger, from which the two are one person's. */
    private static final double MOSTLY_INSIDE = 0.8;

    /** Joints below this are not seen. */
    private static final double LEAST_JOINT_SCORE = 0.3;

    private PoseClaims() {}

    /** A person and the joints that are his. */
    record Claim(Detection detection, Optional<Pose> pose) {}

    /** People whose joints nobody looked for. */
    static List<Claim> none(List<Detection> detections) {
        return detections.stream().map(d -> new Claim(d, Optional.empty())).toList();
    }

    /**
     * The people, in the same order.
     *
     * @param detections best first
     * @param poses one for each
     */
    static List<Claim> settled(List<Detection> detections, List<Pose> poses) {
        boolean[] loses = new boolean[detections.size()];
        boolean[] goes = new boolean[detections.size()];
        for (int i = 0; i < loses.length; i++) {
            for (int k = i + 1; k < loses.length; k++) {
                ImageBox one = detections.get(i).box();
                ImageBox other = detections.get(k).box();
                double larger = Math.max(one.area(), other.area());
                if (PoseOverlap.of(poses.get(i), poses.get(k), larger) <= SAME_POSE) {
                    continue;
                }
                int loser = fit(one, poses.get(i)) >= fit(other, poses.get(k)) ? k : i;
                loses[loser] = true;
                double smaller = Math.min(one.area(), other.area());
                goes[loser] |= one.intersectionArea(other) > MOSTLY_INSIDE * smaller;
            }
        }
        List<Claim> claims = new ArrayList<>();
        for (int i = 0; i < loses.length; i++) {
            if (!goes[i]) {
                claims.add(new Claim(detections.get(i), loses[i] ? Optional.empty() : Optional.of(poses.get(i))));
            }
        }
        return claims;
    }

    /** Intersection over union of the box and the part of the picture that the joints span. */
    private static double fit(ImageBox box, Pose pose) {
        double left = Double.POSITIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (Keypoint joint : pose.keypoints()) {
            if (joint.score() >= LEAST_JOINT_SCORE) {
                left = Math.min(left, joint.position().x());
                right = Math.max(right, joint.position().x());
                top = Math.min(top, joint.position().y());
                bottom = Math.max(bottom, joint.position().y());
            }
        }
        return right > left && bottom > top
                ? box.intersectionOverUnion(new ImageBox(left, top, right - left, bottom - top))
                : 0;
    }
}
