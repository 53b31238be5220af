package floorgauge.eval.pose;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Pose;
import java.util.Set;

/** The upright box around joints. */
public final class JointBox {

    /** Joints that all lie on one upright or level line still make a box. */
    private static final double THINNEST_PIXELS = 1e-6;

    private JointBox() {}

    /** @param joints at least one */
    public static ImageBox around(Pose pose, Set<Joint> joints) {
        double left = Double.POSITIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (Joint joint : joints) {
            PixelPoint point = pose.at(joint).position();
            left = Math.min(left, point.x());
            right = Math.max(right, point.x());
            top = Math.min(top, point.y());
            bottom = Math.max(bottom, point.y());
        }
        return new ImageBox(
                left, top, Math.max(right - left, THINNEST_PIXELS), Math.max(bottom - top, THINNEST_PIXELS));
    }
}
