package floorgauge.eval.pose;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.eval.tracking.Similarity;

/**
 * Object keypoint similarity of the COCO keypoint task: the mean over labelled joints of {@code exp(-d² / (2 s² k²))}, with d
 * the distance in pixels, s² the person's area and k twice the joint's sigma (cocodataset.org, keypoint evaluation; sigmas
 * from cocoapi). A truth without a labelled joint is compared by its box: d is then how far a joint lies outside the box grown
 * by its own size to every side, as cocoapi does, so that a result on an unlabelled person can be let off.
 */
public final class ObjectKeypointSimilarity implements Similarity<PosedPerson> {

    /** In tenths, in the order of {@link Joint} (cocoapi). */
    private static final double[] SIGMA_TENTHS = {
        .26, .25, .25, .35, .35, .79, .79, .72, .72, .62, .62, 1.07, 1.07, .87, .87, .89, .89
    };

    @Override
    public double of(PosedPerson truth, PosedPerson result) {
        return truth.labelled().isEmpty() ? againstBox(truth, result) : againstJoints(truth, result);
    }

    private static double againstJoints(PosedPerson truth, PosedPerson result) {
        double sum = 0;
        for (Joint joint : truth.labelled()) {
            PixelPoint expected = truth.pose().at(joint).position();
            PixelPoint found = result.pose().at(joint).position();
            sum += closeness(joint, found.x() - expected.x(), found.y() - expected.y(), truth.areaSquarePixels());
        }
        return sum / truth.labelled().size();
    }

    private static double againstBox(PosedPerson truth, PosedPerson result) {
        ImageBox box = truth.box();
        double sum = 0;
        for (Joint joint : Joint.values()) {
            PixelPoint found = result.pose().at(joint).position();
            double dx = outside(found.x(), box.left() - box.width(), box.right() + box.width());
            double dy = outside(found.y(), box.top() - box.height(), box.bottom() + box.height());
            sum += closeness(joint, dx, dy, truth.areaSquarePixels());
        }
        return sum / Joint.values().length;
    }

    private static double outside(double value, double from, double to) {
        return Math.max(0, from - value) + Math.max(0, value - to);
    }

    private static double closeness(Joint joint, double dx, double dy, double area) {
        double k = 2 * SIGMA_TENTHS[joint.ordinal()] / 10;
        return Math.exp(-(dx * dx + dy * dy) / (2 * area * k * k));
    }
}
