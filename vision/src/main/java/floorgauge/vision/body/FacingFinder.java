package floorgauge.vision.body;

import floorgauge.court.track.Facing;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.Optional;

/**
 * Which way the front of a body points, from shoulders, hips and nose.
 *
 * <p>With theta the facing, measured from the direction away from the camera towards its left, a body of shoulder breadth W
 * shows its right shoulder W cos(theta) to the right of its left one, and farther away by W sin(theta), which is higher in the
 * picture the more steeply the camera looks down; a nose N ahead of the shoulders shows N sin(theta) to the left of their
 * middle. From low on the shoulders tell how square the body is but not to which side it is turned: the nose tells that. The likelihood over a ring of directions, with a share for a network that takes left for right, gives the mean
 * direction and its spread; a spread too wide is "not seen".
 */
final class FacingFinder {

    /** Breadth over the shoulder joints, of stature: 0.259 (Drillis and Contini, 1966), less what a network sees inside. */
    private static final double SHOULDER_BREADTH = 0.22;

    /** Breadth over the hip joints, of stature: 0.191 over the outside (Drillis and Contini, 1966), joints well inside. */
    private static final double HIP_BREADTH = 0.11;

    /** Nose ahead of the shoulders' middle, of stature (measured on oneself). */
    private static final double NOSE_AHEAD = 0.08;

    /** Error of a joint, of stature, and of a breadth, of itself: people differ. */
    private static final double JOINT_ERROR = 0.025;

    private static final double BREADTH_ERROR = 0.2;

    /** How often the network takes left for right. */
    private static final double EXCHANGED = 0.1;

    /** One shoulder or hip is higher than the other by this, of their distance: people lean (common practice). */
    private static final double TILT_RADIANS = 0.25;

    /** From straight above nobody has a height. */
    private static final double LEAST_SHORTENING = 0.04;

    private static final int DIRECTIONS = 72;

    /** Circular standard deviation beyond which the facing was not seen. */
    private static final double WIDEST_RADIANS = 1.1;

    /** However clear the picture, a shoulder line is not the normal of a body: arms swing. */
    private static final double LEAST_RADIANS = 0.15;

    private FacingFinder() {}

    /**
     * The facing.
     *
     * @param pose joints
     * @param staturePixels a person's upright height in the picture where this one stands
     * @param awayRadians direction on the floor away from the camera, in the court frame
     * @param steepness pixels that a length away from the camera takes up the picture, over those that it takes across: the sine
     *     of the angle under which the camera looks down
     */
    static Optional<Facing> find(Pose pose, double staturePixels, double awayRadians, double steepness) {
        double[] logs = new double[DIRECTIONS];
        boolean any = addPair(
                logs, pose, Joint.LEFT_SHOULDER, Joint.RIGHT_SHOULDER, SHOULDER_BREADTH, staturePixels, steepness);
        if (!any) {
            return Optional.empty();
        }
        addPair(logs, pose, Joint.LEFT_HIP, Joint.RIGHT_HIP, HIP_BREADTH, staturePixels, steepness);
        addNose(logs, pose, staturePixels);
        return summarised(logs, awayRadians);
    }

    private static double angle(int direction) {
        return 2 * Math.PI * direction / DIRECTIONS;
    }

    private static boolean addPair(
            double[] logs,
            Pose pose,
            Joint leftJoint,
            Joint rightJoint,
            double breadth,
            double stature,
            double steepness) {
        Keypoint left = pose.at(leftJoint);
        Keypoint right = pose.at(rightJoint);
        if (!seen(left) || !seen(right)) {
            return false;
        }
        // A camera that looks down sees people shorter, not narrower.
        double across = stature / Math.sqrt(Math.max(LEAST_SHORTENING, 1 - steepness * steepness));
        double toRight = (right.position().x() - left.position().x()) / across;
        double up = (left.position().y() - right.position().y()) / across;
        double sigma = Math.hypot(JOINT_ERROR * Math.sqrt(2), BREADTH_ERROR * breadth);
        double sigmaUp = Math.hypot(JOINT_ERROR * Math.sqrt(2), TILT_RADIANS * breadth);
        for (int i = 0; i < DIRECTIONS; i++) {
            double wide = breadth * Math.cos(angle(i));
            double away = breadth * steepness * Math.sin(angle(i));
            double asSeen = density(toRight - wide, sigma) * density(up - away, sigmaUp);
            double exchanged = density(toRight + wide, sigma) * density(up + away, sigmaUp);
            logs[i] += Math.log((1 - EXCHANGED) * asSeen + EXCHANGED * exchanged + 1e-9);
        }
        return true;
    }

    private static void addNose(double[] logs, Pose pose, double stature) {
        Keypoint nose = pose.at(Joint.NOSE);
        Keypoint left = pose.at(Joint.LEFT_SHOULDER);
        Keypoint right = pose.at(Joint.RIGHT_SHOULDER);
        if (!seen(nose)) {
            return;
        }
        double middle = (left.position().x() + right.position().x()) / 2;
        double measured = (nose.position().x() - middle) / stature;
        // Heads turn by themselves and bodies lean: the nose is a weak witness.
        double sigma = Math.hypot(JOINT_ERROR, 0.6 * NOSE_AHEAD);
        for (int i = 0; i < DIRECTIONS; i++) {
            logs[i] += Math.log(density(measured + NOSE_AHEAD * Math.sin(angle(i)), sigma) + 1e-9);
        }
    }

    private static boolean seen(Keypoint joint) {
        return joint.score() >= FootFinder.LEAST_JOINT_SCORE;
    }

    private static double density(double difference, double sigma) {
        double z = difference / sigma;
        return Math.exp(-0.5 * z * z);
    }

    private static Optional<Facing> summarised(double[] logs, double awayRadians) {
        double most = Double.NEGATIVE_INFINITY;
        for (double l : logs) {
            most = Math.max(most, l);
        }
        double sum = 0;
        double cos = 0;
        double sin = 0;
        for (int i = 0; i < DIRECTIONS; i++) {
            double p = Math.exp(logs[i] - most);
            sum += p;
            cos += p * Math.cos(angle(i));
            sin += p * Math.sin(angle(i));
        }
        double length = Math.hypot(cos, sin) / sum;
        // Circular standard deviation (K. Mardia and P. Jupp, "Directional statistics", 2000, section 2.3).
        double spread = Math.sqrt(Math.max(0, -2 * Math.log(Math.max(length, 1e-6))));
        if (spread > WIDEST_RADIANS) {
            return Optional.empty();
        }
        double facing = awayRadians + Math.atan2(sin, cos);
        return Optional.of(new Facing(Math.atan2(Math.sin(facing), Math.cos(facing)), Math.max(LEAST_RADIANS, spread)));
    }
}
