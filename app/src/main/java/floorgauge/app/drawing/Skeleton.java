package floorgauge.app.drawing;

import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;

/** A person's joints joined to limbs, over a frame. */
final class Skeleton {

    private Skeleton() {}

    static void draw(Svg svg, FramePlace place, Pose pose, String style) {
        svg.group(style);
        for (Limbs.Limb limb : Limbs.ALL) {
            Keypoint from = pose.at(limb.from());
            Keypoint to = pose.at(limb.to());
            if (from.score() >= Limbs.LEAST_SCORE && to.score() >= Limbs.LEAST_SCORE) {
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
