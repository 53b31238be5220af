package floorgauge.vision.background;

import floorgauge.court.track.ImageBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * What differs from the empty hall in one frame at a time. Owns native buffers, used again for every frame; close it. Not
 * safe for use by several threads.
 */
public final class MovingRegions implements AutoCloseable {

    private static final int MOVING = 255;

    private final BackgroundModel background;
    private final Mat small = new Mat();
    private final Mat difference = new Mat();
    private final Mat limit = new Mat();
    private final Mat exceeds = new Mat();
    private final Mat mask = new Mat();
    private final Mat opened = new Mat();
    private final Mat sums = new Mat();
    private final Mat labels = new Mat();
    private final Mat statistics = new Mat();
    private final Mat centres = new Mat();
    private final Mat kernel = Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(3, 3));
    private BackgroundModel.Stretch limitOf;
    private double scaleX;
    private double scaleY;
    private boolean known;
    private int[] integral = new int[0];
    private int stride;

    public MovingRegions(BackgroundModel background) {
        this.background = background;
    }

    /** Looks at a frame; what the other methods say is of this frame. */
    public void look(Mat bgr, double timeSeconds) {
        Optional<BackgroundModel.Stretch> stretch = background.at(timeSeconds);
        known = stretch.isPresent();
        if (!known) {
            return;
        }
        Size size = stretch.get().median().size();
        scaleX = size.width / bgr.cols();
        scaleY = size.height / bgr.rows();
        Imgproc.resize(bgr, small, size, 0, 0, Imgproc.INTER_AREA);
        Core.absdiff(small, stretch.get().median(), difference);
        if (limitOf != stretch.get()) {
            limitOf = stretch.get();
            Core.multiply(limitOf.spread(), new Scalar(5, 5, 5), limit);
            Core.max(limit, Scalar.all(BackgroundModel.LEAST_DIFFERENCE), limit);
        }
        Core.compare(difference, limit, exceeds, Core.CMP_GT);
        anyChannel();
        Imgproc.morphologyEx(mask, opened, Imgproc.MORPH_OPEN, kernel);
        Imgproc.integral(opened, sums, CvType.CV_32S);
        stride = sums.cols();
        if (integral.length != sums.total()) {
            integral = new int[(int) sums.total()];
        }
        sums.get(0, 0, integral);
    }

    private void anyChannel() {
        List<Mat> channels = new ArrayList<>();
        Core.split(exceeds, channels);
        Core.bitwise_or(channels.get(0), channels.get(1), mask);
        Core.bitwise_or(mask, channels.get(2), mask);
        channels.forEach(Mat::release);
    }

    /** The share of a box that differs, 0 to 1; empty where there is no background or the box is outside the picture. */
    public OptionalDouble share(ImageBox box) {
        if (!known) {
            return OptionalDouble.empty();
        }
        int left = clamp(box.left() * scaleX, stride - 1);
        int right = clamp(box.right() * scaleX, stride - 1);
        int top = clamp(box.top() * scaleY, sums.rows() - 1);
        int bottom = clamp(box.bottom() * scaleY, sums.rows() - 1);
        if (right <= left || bottom <= top) {
            return OptionalDouble.empty();
        }
        double sum = (double) integral[bottom * stride + right]
                - integral[top * stride + right]
                - integral[bottom * stride + left]
                + integral[top * stride + left];
        return OptionalDouble.of(sum / MOVING / ((double) (right - left) * (bottom - top)));
    }

    private static int clamp(double value, int most) {
        return (int) Math.max(0, Math.min(most, Math.round(value)));
    }

    /** Boxes about the connected regions that differ, in order from the top; empty where there is no background. */
    public List<ImageBox> boxes() {
        if (!known) {
            return List.of();
        }
        int count = Imgproc.connectedComponentsWithStats(opened, labels, statistics, centres, 8, CvType.CV_32S);
        List<ImageBox> boxes = new ArrayList<>();
        int[] row = new int[statistics.cols()];
        for (int i = 1; i < count; i++) {
            statistics.get(i, 0, row);
            boxes.add(new ImageBox(
                    row[Imgproc.CC_STAT_LEFT] / scaleX,
                    row[Imgproc.CC_STAT_TOP] / scaleY,
                    row[Imgproc.CC_STAT_WIDTH] / scaleX,
                    row[Imgproc.CC_STAT_HEIGHT] / scaleY));
        }
        return boxes;
    }

    @Override
    public void close() {
        for (Mat mat : List.of(small, difference, limit, exceeds, mask, opened, sums, labels, statistics, centres)) {
            mat.release();
        }
        kernel.release();
    }
}
