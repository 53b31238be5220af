package floorgauge.vision.body;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds the point on the floor on which a person stands: midway between the ankles' floor contacts, else below the one
 * ankle seen, else at the box's lower edge, else, where the feet are behind another person or below the picture, under the
 * knees, the hips or the head, at the height that they have over the floor. Errors in the picture grow with the person's size in it, since a network's grid
 * does; where the feet are hidden the error is as long as the part that is hidden may be.
 */
public final class FootFinder {

    /** Below this a joint is not seen: the network's own confidence, the threshold its authors draw joints from. */
    static final double LEAST_JOINT_SCORE = 0.3;

    /**
     * What people mark as the ankle, and a network trained on their marks finds, above the sole, share of stature: on 74
     * photographed people whose legs are in view the lower ankle is 0.076 above the box's lower edge (median), which lies
     * {@link #TOE} lower than the body stands. The joint itself is at 0.039 (R. Drillis and R. Contini, "Body segment
     * parameters", 1966): marks go to where the leg is thinnest over the shoe.
     */
    static final double ANKLE_HEIGHT = 0.056;

    /** Standard deviation of an ankle, of the person's height in the picture: a third of COCO's human spread times two. */
    private static final double ANKLE_ERROR = 0.03;

    /** The box's lower edge, of its height: networks cut or add a toe. */
    private static final double BOTTOM_ERROR = 0.045;

    /** The box ends at the toe of the nearer foot, which is lower in the picture than the body stands; of its height. */
    static final double TOE = 0.02;

    /** The box's upper edge, of its height. */
    private static final double CROWN_ERROR = 0.02;

    /** The hips left or right of the feet, of the height. */
    private static final double HIPS_ERROR = 0.03;

    /** The feet left or right of the box's middle, of its height: a leaning or striding person. */
    private static final double BOTTOM_SIDE_ERROR = 0.07;

    /** The same where another person, or the picture's edge, hides the lower edge. */
    private static final double HIDDEN_ERROR = 0.15;

    /** The legs of a standing person, of the height: a box that is cut off lacks at most these. */
    private static final double HIDDEN_MOST = 0.4;

    /** How far a swinging ankle is lifted, root mean square from a walk to a run, metres (common practice). */
    private static final double LIFT_METRES = 0.15;

    /** How far a foot is before or behind the body along the line of sight, root mean square, metres (common practice). */
    private static final double STRIDE_METRES = 0.15;

    /** Part of the ankles' distance down the picture that may be a lift, where the camera is not known. */
    private static final double LIFT_SHARE = 0.5;

    /** An average player, with shoes. */
    static final double STATURE_METRES = 1.85;

    /** A box shorter than this part of an upright player's may be cut off below; a crouch is not shorter. */
    private static final double CUT_OFF_SHARE = 0.7;

    private final CourtCalibration calibration;
    private final PlumbLine plumb;

    public FootFinder(CourtCalibration calibration) {
        this.calibration = calibration;
        this.plumb = new PlumbLine(calibration);
    }

    /**
     * The foot point.
     *
     * @param box the person
     * @param pose the person's joints, where the pose network ran
     * @param nearer other people's boxes in the frame; those that end lower in the picture may hide this one's feet
     * @return empty where the point lies at or above the horizon
     */
    public Optional<FootPoint> find(ImageBox box, Optional<Pose> pose, List<ImageBox> nearer) {
        if (pose.isPresent()) {
            Optional<FootPoint> ankles = fromAnkles(box, pose.get(), isHidden(box, nearer));
            if (ankles.isPresent()) {
                return ankles;
            }
        }
        Optional<FootPoint> bottom = fromBox(box, pose, nearer);
        if (bottom.isEmpty()) {
            return bottom;
        }
        if (isCutOff(box)) {
            return fromUpperBody(box, pose, bottom.get(), BodyLevel.CROWN).or(() -> bottom);
        }
        if (isHidden(box, nearer) || missingPixels(box, bottom.get()) > 0) {
            // The box may reach down to the feet all the same, of someone who crouches: a head is no better evidence.
            return fromUpperBody(box, pose, bottom.get(), BodyLevel.HIPS).or(() -> bottom);
        }
        return bottom;
    }

    /**
     * The floor below the top of the box.
     *
     * @return empty under raised arms, which the box ends with, and where the camera's place is not known
     */
    public Optional<UnderHead> underHead(ImageBox box, Optional<Pose> pose) {
        if (pose.filter(FootFinder::reachesUp).isPresent()) {
            return Optional.empty();
        }
        Optional<FloorEstimate> start = calibration.estimate(aboveToe(box), 1, 1);
        Optional<PixelPoint> top = BodyLevel.CROWN.seen(box, pose, calibration.heightPixels());
        if (start.isEmpty() || top.isEmpty()) {
            return Optional.empty();
        }
        double error = CROWN_ERROR * box.height();
        Optional<FloorEstimate> one = plumb.below(start.get().mean(), top.get(), error, 1, 0);
        Optional<FloorEstimate> two = plumb.below(start.get().mean(), top.get(), error, 2, 0);
        if (one.isEmpty() || two.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new UnderHead(
                one.get().mean(), two.get().mean(), two.get().covariance().plus(BodyLevel.CROWN.leaning())));
    }

    private static boolean reachesUp(Pose pose) {
        Keypoint nose = pose.at(Joint.NOSE);
        return isAbove(pose.at(Joint.LEFT_WRIST), nose) || isAbove(pose.at(Joint.RIGHT_WRIST), nose);
    }

    private static boolean isAbove(Keypoint one, Keypoint other) {
        return one.score() >= LEAST_JOINT_SCORE
                && other.score() >= LEAST_JOINT_SCORE
                && one.position().y() < other.position().y();
    }

    /** Feet that are out of sight stand below the lowest pair of joints that is in sight, else below the head. */
    private Optional<FootPoint> fromUpperBody(ImageBox box, Optional<Pose> pose, FootPoint bottom, BodyLevel highest) {
        for (BodyLevel level : BodyLevel.values()) {
            if (level.compareTo(highest) > 0) {
                break;
            }
            Optional<PixelPoint> seen = level.seen(box, pose, calibration.heightPixels());
            if (seen.isPresent()) {
                Optional<FloorEstimate> below = plumb.below(
                        bottom.position().mean(),
                        seen.get(),
                        ANKLE_ERROR * box.height(),
                        level.heightMetres(),
                        level.heightErrorMetres());
                if (below.isPresent()) {
                    FloorEstimate e = below.get();
                    return Optional.of(new FootPoint(
                            new FloorEstimate(e.mean(), e.covariance().plus(level.leaning())), FootSource.BOX_BOTTOM));
                }
            }
        }
        return Optional.empty();
    }

    private Optional<FootPoint> fromAnkles(ImageBox box, Pose pose, boolean hidden) {
        Keypoint left = pose.at(Joint.LEFT_ANKLE);
        Keypoint right = pose.at(Joint.RIGHT_ANKLE);
        boolean seesLeft = usable(left, box);
        boolean seesRight = usable(right, box);
        double h = box.height();
        if (seesLeft && seesRight) {
            PixelPoint a = contact(left.position(), box);
            PixelPoint b = contact(right.position(), box);
            double each = ANKLE_ERROR * h / Math.sqrt(2);
            Guess across = new Guess((a.x() + b.x()) / 2, each);
            Guess lift = lift(a, b);
            Guess down = new Guess((a.y() + b.y()) / 2 + lift.value() / 2, Math.hypot(each, lift.sigma() / 2));
            return at(across, down, box, pose, hidden, FootSource.ANKLES);
        }
        if (seesLeft || seesRight) {
            PixelPoint seen = contact((seesLeft ? left : right).position(), box);
            // The body is half a stance away from one foot.
            double stance = 0.08 * h;
            Guess across = new Guess(seen.x(), Math.hypot(ANKLE_ERROR * h, stance));
            Guess down = new Guess(seen.y(), Math.hypot(ANKLE_ERROR * h, stance / 2));
            return at(across, down, box, pose, hidden, FootSource.ONE_ANKLE);
        }
        return Optional.empty();
    }

    /**
     * How much of the ankles' distance down the picture is the one foot's lift, pixels: the rest is that it is farther away.
     * Taken as two independent normal parts of a known sum, whose sizes follow from how steeply the camera looks down: from
     * low on, a foot that is higher in the picture is mostly in the air.
     */
    private Guess lift(PixelPoint a, PixelPoint b) {
        double distance = Math.abs(a.y() - b.y());
        PixelPoint middle = new PixelPoint((a.x() + b.x()) / 2, Math.max(a.y(), b.y()));
        Optional<FloorPoint> foot = calibration.estimate(middle, 1, 1).map(FloorEstimate::mean);
        OptionalDouble up =
                foot.isPresent() ? calibration.heightInPixels(foot.get(), LIFT_METRES) : OptionalDouble.empty();
        if (up.isEmpty()) {
            return new Guess(LIFT_SHARE * distance, LIFT_SHARE * distance);
        }
        double away = 2 * STRIDE_METRES * downPerMetre(middle, foot.get());
        double share = up.getAsDouble() * up.getAsDouble() / (up.getAsDouble() * up.getAsDouble() + away * away);
        return new Guess(share * distance, Math.min(distance, away * Math.sqrt(share)));
    }

    /** Pixels down the picture for a metre of floor along the line of sight. */
    private double downPerMetre(PixelPoint at, FloorPoint foot) {
        Optional<FloorPoint> below =
                calibration.estimate(new PixelPoint(at.x(), at.y() + 1), 1, 1).map(FloorEstimate::mean);
        return below.map(p -> 1 / Math.max(1e-6, p.distanceTo(foot))).orElse(0.0);
    }

    /** The ankles together with what the hips say across, and the box's lower edge, where nothing hides it, down. */
    private Optional<FootPoint> at(
            Guess across, Guess down, ImageBox box, Pose pose, boolean hidden, FootSource source) {
        Guess x = hips(box, Optional.of(pose)).map(across::with).orElse(across);
        Guess y = hidden ? down : down.with(new Guess(aboveToe(box).y(), BOTTOM_ERROR * box.height()));
        return at(new PixelPoint(x.value(), y.value()), x.sigma(), y.sigma(), source);
    }

    /** The middle of the hips across the picture: over the feet, but for a lean. */
    private static Optional<Guess> hips(ImageBox box, Optional<Pose> pose) {
        return BodyLevel.HIPS.seen(box, pose, Integer.MAX_VALUE).map(p -> new Guess(p.x(), HIPS_ERROR * box.height()));
    }

    private static PixelPoint aboveToe(ImageBox box) {
        PixelPoint bottom = box.bottomCentre();
        return new PixelPoint(bottom.x(), bottom.y() - TOE * box.height());
    }

    /** An ankle in the upper half of the box is a joint gone astray. */
    private boolean usable(Keypoint ankle, ImageBox box) {
        PixelPoint p = ankle.position();
        return ankle.score() >= LEAST_JOINT_SCORE
                && contact(p, box).y() < calibration.heightPixels()
                && p.y() > box.top() + box.height() / 2
                && p.y() < box.bottom() + 0.15 * box.height()
                && p.x() > box.left() - 0.3 * box.height()
                && p.x() < box.right() + 0.3 * box.height();
    }

    /** The sole's contact below an ankle. */
    static PixelPoint contact(PixelPoint ankle, ImageBox box) {
        return new PixelPoint(ankle.x(), ankle.y() + ANKLE_HEIGHT * box.height());
    }

    private Optional<FootPoint> fromBox(ImageBox box, Optional<Pose> pose, List<ImageBox> nearer) {
        double error = (isHidden(box, nearer) ? HIDDEN_ERROR : BOTTOM_ERROR) * box.height();
        Guess middle = new Guess(box.bottomCentre().x(), BOTTOM_SIDE_ERROR * box.height());
        Guess x = hips(box, pose).map(middle::with).orElse(middle);
        PixelPoint pixel = new PixelPoint(x.value(), aboveToe(box).y());
        Optional<FootPoint> plain = at(pixel, x.sigma(), error, FootSource.BOX_BOTTOM);
        if (plain.isEmpty()) {
            return plain;
        }
        double missing = missingPixels(box, plain.get());
        return missing > error ? at(pixel, x.sigma(), missing, FootSource.BOX_BOTTOM) : plain;
    }

    /** How many pixels a cut-off box may lack; 0 for a box as high as a person. */
    private double missingPixels(ImageBox box, FootPoint foot) {
        OptionalDouble upright = calibration.heightInPixels(foot.position().mean(), STATURE_METRES);
        if (upright.isEmpty() || box.height() >= CUT_OFF_SHARE * upright.getAsDouble()) {
            return 0;
        }
        return Math.min(HIDDEN_MOST * upright.getAsDouble(), upright.getAsDouble() - box.height());
    }

    private boolean isCutOff(ImageBox box) {
        return box.bottom() >= calibration.heightPixels() - 2;
    }

    private boolean isHidden(ImageBox box, List<ImageBox> nearer) {
        if (isCutOff(box)) {
            return true;
        }
        ImageBox feet = new ImageBox(box.left(), box.bottom() - 0.12 * box.height(), box.width(), 0.12 * box.height());
        for (ImageBox other : nearer) {
            if (other.bottom() > box.bottom() && other.intersectionArea(feet) > 0.5 * feet.area()) {
                return true;
            }
        }
        return false;
    }

    private Optional<FootPoint> at(PixelPoint pixel, double sigmaX, double sigmaY, FootSource source) {
        Optional<FloorEstimate> floor = calibration.estimate(pixel, sigmaX, sigmaY);
        return floor.map(f -> new FootPoint(f, source));
    }
}
