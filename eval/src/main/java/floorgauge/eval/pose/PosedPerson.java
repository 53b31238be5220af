package floorgauge.eval.pose;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Pose;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;

/**
 * A pose with what scoring needs beside it.
 *
 * @param pose joints in the picture
 * @param labelled joints that the label places, visible or not; for a result all that it gives
 * @param areaSquarePixels of the person in the picture, above 0: in COCO the area of the person's outline
 * @param box around the person
 */
public record PosedPerson(Pose pose, Set<Joint> labelled, double areaSquarePixels, ImageBox box) {

    public PosedPerson {
        Objects.requireNonNull(pose, "pose");
        Objects.requireNonNull(box, "box");
        EnumSet<Joint> joints = EnumSet.noneOf(Joint.class);
        joints.addAll(labelled);
        labelled = Collections.unmodifiableSet(joints);
        if (!(areaSquarePixels > 0 && Double.isFinite(areaSquarePixels))) {
            throw new IllegalArgumentException("an area is above 0: " + areaSquarePixels);
        }
    }

    /** A result: every joint is given; the area is that of the joints' bounding box, as cocoapi takes it for results. */
    public static PosedPerson result(Pose pose) {
        ImageBox box = JointBox.around(pose, EnumSet.allOf(Joint.class));
        return new PosedPerson(pose, EnumSet.allOf(Joint.class), box.area(), box);
    }
}
