package floorgauge.vision.body;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.List;
import java.util.Optional;

/**
 * How high the parts of a player are over the floor, from the lowest up. Upright shares of stature: knee 0.285, hip 0.530,
 * eye 0.936 (R. Drillis and R. Contini, "Body segment parameters", 1966). A player in stance bends hips and knees, so the
 * heights stand between upright and a deep stance, with an error that spans both; how far a part is beside the feet is a
 * second error.
 */
enum BodyLevel {
    KNEES(List.of(Joint.LEFT_KNEE, Joint.RIGHT_KNEE), 0.27, 0.03, 0.13),
    HIPS(List.of(Joint.LEFT_HIP, Joint.RIGHT_HIP), 0.50, 0.05, 0.10),
    EYES(List.of(Joint.LEFT_EYE, Joint.RIGHT_EYE), 0.87, 0.07, 0.15),
    CROWN(List.of(), 0.94, 0.10, 0.20);

    private final List<Joint> joints;
    private final double height;
    private final double heightError;
    private final double leaning;

    /**
     * @param joints seen at this level; none for the top of the box
     * @param height over the floor, share of stature
     * @param heightError standard deviation of that share, between players and postures
     * @param leaning standard deviation beside the feet, metres
     */
    BodyLevel(List<Joint> joints, double height, double heightError, double leaning) {
        this.joints = joints;
        this.height = height;
        this.heightError = heightError;
        this.leaning = leaning;
    }

    double heightMetres() {
        return height * FootFinder.STATURE_METRES;
    }

    double heightErrorMetres() {
        return heightError * FootFinder.STATURE_METRES;
    }

    FloorCovariance leaning() {
        return FloorCovariance.isotropic(leaning);
    }

    /** The middle of the level's joints; empty where one of them is not seen in the picture. */
    Optional<PixelPoint> seen(ImageBox box, Optional<Pose> pose, int pictureHeight) {
        if (joints.isEmpty()) {
            return Optional.of(new PixelPoint(box.left() + box.width() / 2, box.top()));
        }
        if (pose.isEmpty()) {
            return Optional.empty();
        }
        double x = 0;
        double y = 0;
        for (Joint joint : joints) {
            Keypoint k = pose.get().at(joint);
            if (k.score() < FootFinder.LEAST_JOINT_SCORE || k.position().y() >= pictureHeight) {
                return Optional.empty();
            }
            x += k.position().x() / joints.size();
            y += k.position().y() / joints.size();
        }
        return Optional.of(new PixelPoint(x, y));
    }
}
