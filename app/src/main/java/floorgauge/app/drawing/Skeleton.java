package floorgauge.app.drawing;

import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.List;

/** A person's joints joined to limbs, over a frame. */
final class Skeleton {

    /** A joint less certain than this is more often wrong than drawn right (common practice with pose networks). */
    private static final double LEAST_SCORE = 0.2;

    private static final List<Joint[]> LIMBS = List.of(
            new Joint[] {Joint.LEFT_SHOULDER, Joint.RIGHT_SHOULDER},
            new Joint[] {Joint.LEFT_HIP, Joint.RIGHT_HIP},
            new Joint[] {Joint.LEFT_SHOULDER, Joint.LEFT_HIP},
            new Joint[] {Joint.RIGHT_SHOULDER, Joint.RIGHT_HIP},
            new Joint[] {Joint.LEFT_SHOULDER, Joint.LEFT_ELBOW},
            new Joint[] {Joint.LEFT_ELBOW, Joint.LEFT_WRIST},
            new Joint[] {Joint.RIGHT_SHOULDER, Joint.RIGHT_ELBOW},
            new Joint[] {Joint.RIGHT_ELBOW, Joint.RIGHT_WRIST},
            new Joint[] {Joint.LEFT_HIP, Joint.LEFT_KNEE},
            new Joint[] {Joint.LEFT_KNEE, Joint.LEFT_ANKLE},
            new Joint[] {Joint.RIGHT_HIP, Joint.RIGHT_KNEE},
            new Joint[] {Joint.RIGHT_KNEE, Joint.RIGHT_ANKLE});

    private Skeleton() {}

    static void draw(Svg svg, FramePlace place, Pose pose, String style) {
        svg.group(style);
        for (Joint[] limb : LIMBS) {
            Keypoint from = pose.at(limb[0]);
            Keypoint to = pose.at(limb[1]);
            if (from.score() >= LEAST_SCORE && to.score() >= LEAST_SCORE) {
                svg.line(
                        place.x(from.position().x()),
                        place.y(from.position().y()),
                        place.x(to.position().x()),
                        place.y(to.position().y()),
                        "limb");
            }
        }
        svg.end();
    }
}
