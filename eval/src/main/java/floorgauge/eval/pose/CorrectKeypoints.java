package floorgauge.eval.pose;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Pose;
import floorgauge.eval.statistics.Ratios;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Percentage of correct keypoints (Yang and Ramanan, 2013, "Articulated human detection with flexible mixtures of parts";
 * Sapp and Taskar, 2013, "MODEC", for the torso): the share of labelled joints that a result places within {@code alpha}
 * times a length of the labelled body. People are given in pairs; who belongs to whom is settled elsewhere.
 */
public final class CorrectKeypoints {

    private final double alpha;
    private final ToDoubleFunction<PosedPerson> length;
    private final Map<Joint, long[]> correctAndAll = new EnumMap<>(Joint.class);

    private CorrectKeypoints(double alpha, ToDoubleFunction<PosedPerson> length) {
        if (!(alpha > 0)) {
            throw new IllegalArgumentException("a share of the body is above 0: " + alpha);
        }
        this.alpha = alpha;
        this.length = length;
    }

    /** Within a share of the longer side of the person's box. */
    public static CorrectKeypoints ofBox(double alpha) {
        return new CorrectKeypoints(alpha, person -> longerSide(person.box()));
    }

    /** Within a share of the torso, left shoulder to right hip; people without both labelled are left out. */
    public static CorrectKeypoints ofTorso(double alpha) {
        return new CorrectKeypoints(alpha, CorrectKeypoints::torso);
    }

    /** Takes one labelled person and the result that stands for them. */
    public void add(PosedPerson truth, Pose result) {
        double limit = alpha * length.applyAsDouble(truth);
        if (Double.isNaN(limit)) {
            return;
        }
        for (Joint joint : truth.labelled()) {
            long[] counts = correctAndAll.computeIfAbsent(joint, j -> new long[2]);
            double distance = truth.pose()
                    .at(joint)
                    .position()
                    .distanceTo(result.at(joint).position());
            counts[0] += distance <= limit ? 1 : 0;
            counts[1]++;
        }
    }

    /** Over all joints, 0 to 1; NaN without any. */
    public double share() {
        long correct = correctAndAll.values().stream().mapToLong(c -> c[0]).sum();
        long all = correctAndAll.values().stream().mapToLong(c -> c[1]).sum();
        return Ratios.of(correct, all);
    }

    /** Of one joint, 0 to 1; NaN where it was never labelled. */
    public double share(Joint joint) {
        long[] counts = correctAndAll.getOrDefault(joint, new long[2]);
        return Ratios.of(counts[0], counts[1]);
    }

    private static double longerSide(ImageBox box) {
        return Math.max(box.width(), box.height());
    }

    private static double torso(PosedPerson person) {
        if (!person.labelled().contains(Joint.LEFT_SHOULDER)
                || !person.labelled().contains(Joint.RIGHT_HIP)) {
            return Double.NaN;
        }
        return person.pose()
                .at(Joint.LEFT_SHOULDER)
                .position()
                .distanceTo(person.pose().at(Joint.RIGHT_HIP).position());
    }
}
