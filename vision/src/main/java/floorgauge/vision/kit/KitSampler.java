package floorgauge.vision.kit;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Pose;
import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Samples the shirt: the quadrangle of shoulders and hips where the pose sees them, else the part of the box where an
 * upright person's chest is. Nothing is said where another person stands in front. Owns native buffers; close it. Not safe
 * for use by several threads.
 */
public final class KitSampler implements AutoCloseable {

    private static final double LEAST_JOINT_SCORE = 0.3;

    /** A shirt is looked at in at most so many pixels a side: colours need no more. */
    private static final int MOST_PIXELS = 24;

    /** A smaller patch says nothing of a colour. */
    private static final int LEAST_PIXELS = 3;

    /** Part of the shirt that may be hidden by others before it is not sampled. */
    private static final double MOST_HIDDEN = 0.25;

    private final Mat small = new Mat();
    private final Mat lab = new Mat();

    /**
     * The shirt's colours.
     *
     * @param picture 8-bit BGR
     * @param box the person
     * @param pose the person's joints
     * @param others other people's boxes in the frame
     */
    public Optional<KitColour> sample(Mat picture, ImageBox box, Optional<Pose> pose, List<ImageBox> others) {
        ImageBox shirt = pose.flatMap(KitSampler::torso).orElseGet(() -> chest(box));
        if (isHidden(box, shirt, others)) {
            return Optional.empty();
        }
        int left = (int) Math.max(0, Math.round(shirt.left()));
        int top = (int) Math.max(0, Math.round(shirt.top()));
        int right = (int) Math.min(picture.cols(), Math.round(shirt.right()));
        int bottom = (int) Math.min(picture.rows(), Math.round(shirt.bottom()));
        if (right - left < LEAST_PIXELS || bottom - top < LEAST_PIXELS) {
            return Optional.empty();
        }
        Mat patch = picture.submat(new Rect(left, top, right - left, bottom - top));
        try {
            Size size = new Size(Math.min(MOST_PIXELS, patch.cols()), Math.min(MOST_PIXELS, patch.rows()));
            Imgproc.resize(patch, small, size, 0, 0, Imgproc.INTER_AREA);
        } finally {
            patch.release();
        }
        return Optional.of(histogram());
    }

    /** OpenCV's 8-bit Lab: L* times 255/100, a* and b* plus 128. */
    private KitColour histogram() {
        Imgproc.cvtColor(small, lab, Imgproc.COLOR_BGR2Lab);
        byte[] values = new byte[(int) lab.total() * 3];
        lab.get(0, 0, values);
        KitColour.Sampler sampler = new KitColour.Sampler();
        for (int i = 0; i < values.length; i += 3) {
            sampler.add((values[i] & 0xFF) * 100.0 / 255, (values[i + 1] & 0xFF) - 128, (values[i + 2] & 0xFF) - 128);
        }
        return sampler.kit();
    }

    private static ImageBox chest(ImageBox box) {
        return new ImageBox(
                box.left() + 0.3 * box.width(), box.top() + 0.2 * box.height(), 0.4 * box.width(), 0.28 * box.height());
    }

    private static Optional<ImageBox> torso(Pose pose) {
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = 0;
        double bottom = 0;
        for (Joint joint : List.of(Joint.LEFT_SHOULDER, Joint.RIGHT_SHOULDER, Joint.LEFT_HIP, Joint.RIGHT_HIP)) {
            if (pose.at(joint).score() < LEAST_JOINT_SCORE) {
                return Optional.empty();
            }
            PixelPoint p = pose.at(joint).position();
            left = Math.min(left, p.x());
            right = Math.max(right, p.x());
            boolean shoulder = joint == Joint.LEFT_SHOULDER || joint == Joint.RIGHT_SHOULDER;
            top += shoulder ? p.y() / 2 : 0;
            bottom += shoulder ? 0 : p.y() / 2;
        }
        if (bottom - top < LEAST_PIXELS) {
            return Optional.empty();
        }
        // Seen from the side the joints lie above one another, but a chest is still half as deep as it is long.
        double middle = (left + right) / 2;
        double half = Math.max((right - left) / 2, 0.2 * (bottom - top));
        return Optional.of(new ImageBox(middle - half, top, 2 * half, bottom - top));
    }

    private static boolean isHidden(ImageBox box, ImageBox shirt, List<ImageBox> others) {
        double hidden = 0;
        for (ImageBox other : others) {
            if (other.bottom() > box.bottom()) {
                hidden += other.intersectionArea(shirt);
            }
        }
        return hidden > MOST_HIDDEN * shirt.area();
    }

    @Override
    public void close() {
        small.release();
        lab.release();
    }
}
