package floorgauge.vision.network;

import floorgauge.court.track.ImageBox;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * How a part of a picture lies in a network's input: scaled, at the top left, the rest grey.
 *
 * <p>Resizing maps edges to edges: an edge at e pixels from the region's left edge lies at e * scaledWidth / region.width in
 * the input. The project's picture points count from the first pixel's centre, half a pixel further in.
 */
final class Letterbox {

    /** The networks halve their input five times. */
    static final int SIZE_STEP = 32;

    /** The detector picks its best hundred out of a sixteenth of its input's pixels. */
    private static final int LEAST_SIZE = 64;

    private static final double HALF_PIXEL = 0.5;
    private static final Scalar GREY = Scalar.all(114);

    private final Rect region;
    private final int scaledWidth;
    private final int scaledHeight;

    /**
     * @param region part of the picture, pixels
     * @param scale input pixels for one picture pixel, above 0
     */
    Letterbox(Rect region, double scale) {
        if (region.width < 1 || region.height < 1) {
            throw new IllegalArgumentException("region must not be empty: " + region);
        }
        if (!(scale > 0 && Double.isFinite(scale))) {
            throw new IllegalArgumentException("scale must be positive: " + scale);
        }
        this.region = region;
        scaledWidth = (int) Math.max(1, Math.round(region.width * scale));
        scaledHeight = (int) Math.max(1, Math.round(region.height * scale));
    }

    /** Width of the input, a multiple of {@value #SIZE_STEP}. */
    int inputWidth() {
        return roundedUp(scaledWidth);
    }

    /** Height of the input, a multiple of {@value #SIZE_STEP}. */
    int inputHeight() {
        return roundedUp(scaledHeight);
    }

    private static int roundedUp(int size) {
        return Math.max(LEAST_SIZE, (size + SIZE_STEP - 1) / SIZE_STEP * SIZE_STEP);
    }

    /** Writes the region into an input of {@link #inputWidth} x {@link #inputHeight}. */
    void fill(Mat bgr, Mat input) {
        Mat part = bgr.submat(region);
        Mat target = input.submat(0, scaledHeight, 0, scaledWidth);
        if (scaledWidth == region.width && scaledHeight == region.height) {
            part.copyTo(target);
        } else {
            boolean smaller = scaledWidth < region.width;
            Imgproc.resize(
                    part,
                    target,
                    new Size(scaledWidth, scaledHeight),
                    0,
                    0,
                    smaller ? Imgproc.INTER_AREA : Imgproc.INTER_LINEAR);
        }
        greyOut(input, 0, scaledHeight, scaledWidth, input.cols());
        greyOut(input, scaledHeight, input.rows(), 0, input.cols());
        target.release();
        part.release();
    }

    private static void greyOut(Mat input, int top, int bottom, int left, int right) {
        if (top < bottom && left < right) {
            Mat rest = input.submat(top, bottom, left, right);
            rest.setTo(GREY);
            rest.release();
        }
    }

    /** A box whose edges are given in input pixels, in the picture's own pixels. */
    ImageBox toPicture(double left, double top, double right, double bottom) {
        double xFactor = (double) region.width / scaledWidth;
        double yFactor = (double) region.height / scaledHeight;
        return new ImageBox(
                region.x + left * xFactor - HALF_PIXEL,
                region.y + top * yFactor - HALF_PIXEL,
                (right - left) * xFactor,
                (bottom - top) * yFactor);
    }

    /** The whole of a picture. */
    static Rect whole(Mat bgr) {
        return new Rect(0, 0, bgr.cols(), bgr.rows());
    }
}
