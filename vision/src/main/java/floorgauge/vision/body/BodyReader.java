package floorgauge.vision.body;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Body;
import floorgauge.court.track.Facing;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what a pose says of the body on the floor in one frame. */
public final class BodyReader {

    /** As for the foot point; see {@link FootFinder}. */
    private static final double ANKLE_ERROR = 0.03;

    /** Breadth over the shoulders, of stature (R. Drillis and R. Contini, "Body segment parameters", 1966). */
    private static final double SHOULDERS_METRES = 0.259 * FootFinder.STATURE_METRES * 0.9;

    private final CourtCalibration calibration;

    public BodyReader(CourtCalibration calibration) {
        this.calibration = calibration;
    }

    /**
     * The body, what was not seen left empty.
     *
     * @param box the person
     * @param pose the person's joints
     * @param foot where the person stands
     */
    public Body read(ImageBox box, Pose pose, FloorPoint foot) {
        Optional<FloorEstimate> left = ankle(box, pose.at(Joint.LEFT_ANKLE));
        Optional<FloorEstimate> right = ankle(box, pose.at(Joint.RIGHT_ANKLE));
        Optional<Facing> facing = facing(box, pose, foot);
        return new Body(left, right, facing, stance(left, right, facing), OptionalDouble.empty());
    }

    private Optional<FloorEstimate> ankle(ImageBox box, Keypoint ankle) {
        if (ankle.score() < FootFinder.LEAST_JOINT_SCORE) {
            return Optional.empty();
        }
        double error = ANKLE_ERROR * box.height();
        return calibration.estimate(FootFinder.contact(ankle.position(), box), error, error);
    }

    private Optional<Facing> facing(ImageBox box, Pose pose, FloorPoint foot) {
        PixelPoint here = calibration.pixelAt(foot);
        Optional<FloorEstimate> above = calibration.estimate(new PixelPoint(here.x(), here.y() - 1), 0, 0);
        if (above.isEmpty()) {
            return Optional.empty();
        }
        FloorPoint beyond = above.get().mean();
        double away = Math.atan2(beyond.yMetres() - foot.yMetres(), beyond.xMetres() - foot.xMetres());
        double beside = here.x() + 1;
        Optional<FloorEstimate> right = calibration.estimate(new PixelPoint(beside, here.y()), 0, 0);
        double steepness = right.isEmpty()
                ? 0
                : Math.min(1, right.get().mean().distanceTo(foot) / Math.max(1e-9, beyond.distanceTo(foot)));
        double stature =
                calibration.heightInPixels(foot, FootFinder.STATURE_METRES).orElse(box.height());
        return FacingFinder.find(pose, stature, away, steepness);
    }

    /** Ankles apart, along the shoulder line where the facing is known, over the shoulders' breadth. */
    private static OptionalDouble stance(
            Optional<FloorEstimate> left, Optional<FloorEstimate> right, Optional<Facing> facing) {
        if (left.isEmpty() || right.isEmpty()) {
            return OptionalDouble.empty();
        }
        double dx = right.get().mean().xMetres() - left.get().mean().xMetres();
        double dy = right.get().mean().yMetres() - left.get().mean().yMetres();
        double apart = facing.isPresent()
                ? Math.abs(dx * Math.sin(facing.get().radians())
                        - dy * Math.cos(facing.get().radians()))
                : Math.hypot(dx, dy);
        return OptionalDouble.of(apart / SHOULDERS_METRES);
    }
}
