package floorgauge.vision.body;

import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;

/**
 * How far two poses are one person's: the object keypoint similarity of COCO (M. Ronchi and P. Perona, "Benchmarking and
 * error diagnosis in multi-instance pose estimation", 2017) between two estimates, over the joints that both see.
 */
public final class PoseOverlap {

    /** COCO's constants for each joint, nose first (cocoapi); twice the annotators' standard deviation. */
    private static final double[] SPREADS = {
        0.026, 0.025, 0.025, 0.035, 0.035, 0.079, 0.079, 0.072, 0.072, 0.062, 0.062, 0.107, 0.107, 0.087, 0.087, 0.089,
        0.089
    };

    /** With fewer joints in common nothing is said. */
    private static final int LEAST_JOINTS = 5;

    private PoseOverlap() {}

    /**
     * Similarity from 0 to 1; 0 where too few joints are seen in both.
     *
     * @param areaPixels of the larger of the two boxes
     */
    public static double of(Pose one, Pose other, double areaPixels) {
        double sum = 0;
        int common = 0;
        for (Joint joint : Joint.values()) {
            Keypoint a = one.at(joint);
            Keypoint b = other.at(joint);
            if (a.score() >= FootFinder.LEAST_JOINT_SCORE && b.score() >= FootFinder.LEAST_JOINT_SCORE) {
                double d = a.position().distanceTo(b.position());
                double k = 2 * SPREADS[joint.ordinal()];
                sum += Math.exp(-d * d / (2 * areaPixels * k * k));
                common++;
            }
        }
        return common < LEAST_JOINTS ? 0 : sum / common;
    }
}
