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

    /** Part of the shirt that must be in sight; what others before it hide is not sampled. */
    private static final double LEAST_IN_SIGHT = 0.3;

    /** The outer tenth of a box on either side holds arms and feet at most: it hides no shirt. */
    private static final double SIDE = 0.1;

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
        List<ImageBox> before =
                others.stream().filter(o -> o.bottom() > box.bottom()).toList();
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
        double stepX = (double) (right - left) / small.cols();
        double stepY = (double) (bottom - top) / small.rows();
        return histogram(left, top, stepX, stepY, before);
    }

    /**
     * Of the patch in {@code small}, whose pixels are so large in the picture. OpenCV's 8-bit Lab: L* times 255/100, a* and b*
     * plus 128.
     */
    private Optional<KitColour> histogram(double left, double top, double stepX, double stepY, List<ImageBox> before) {
        Imgproc.cvtColor(small, lab, Imgproc.COLOR_BGR2Lab);
        byte[] values = new byte[(int) lab.total() * 3];
        lab.get(0, 0, values);
        KitColour.Sampler sampler = new KitColour.Sampler();
        for (int i = 0; i < values.length; i += 3) {
            double x = left + (i / 3 % small.cols() + 0.5) * stepX - 0.5;
            double y = top + (i / 3 / small.cols() + 0.5) * stepY - 0.5;
            if (!isHidden(x, y, before)) {
                sampler.add(
                        (values[i] & 0xFF) * 100.0 / 255, (values[i + 1] & 0xFF) - 128, (values[i + 2] & 0xFF) - 128);
            }
        }
        double least = Math.max(LEAST_PIXELS * LEAST_PIXELS, LEAST_IN_SIGHT * values.length / 3);
        return sampler.pixels() < least ? Optional.empty() : Optional.of(sampler.kit());
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

    private static boolean isHidden(double x, double y, List<ImageBox> before) {
        return before.stream()
                .anyMatch(b -> x >= b.left() + SIDE * b.width()
                        && x <= b.right() - SIDE * b.width()
                        && y >= b.top()
                        && y <= b.bottom());
    }

    @Override
    public void close() {
        small.release();
        lab.release();
    }
}
