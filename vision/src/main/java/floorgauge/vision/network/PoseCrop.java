package floorgauge.vision.network;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * The square round a person that the pose network sees. It is cut at fractions of a pixel, and reaches beyond the picture
 * where the person stands at its edge; what lies outside is black.
 *
 * @param left edge of the square in the picture, pixels from the first pixel's centre
 * @param top edge of the square in the picture, likewise
 * @param side of the square, picture pixels
 */
record PoseCrop(double left, double top, double side) {

    /** The square's side over the box's longer one: room for limbs that the box cuts off. */
    static final double MARGIN = 1.25;

    private static final double HALF_PIXEL = 0.5;

    /** The square round a box. */
    static PoseCrop around(ImageBox box) {
        double side = Math.max(box.width(), box.height()) * MARGIN;
        return new PoseCrop(box.left() + (box.width() - side) / 2, box.top() + (box.height() - side) / 2, side);
    }

    /**
     * Cuts the square out.
     *
     * @param bgr the picture
     * @param input square, overwritten
     */
    void cut(Mat bgr, Mat input) {
        double factor = input.cols() / side;
        // Edges map to edges; warpAffine counts from pixel centres, which lie half a pixel further in.
        double xShift = -left * factor - HALF_PIXEL;
        double yShift = -top * factor - HALF_PIXEL;
        Mat toInput = new Mat(2, 3, CvType.CV_64F);
        toInput.put(0, 0, factor, 0, xShift, 0, factor, yShift);
        Imgproc.warpAffine(
                bgr,
                input,
                toInput,
                new Size(input.cols(), input.rows()),
                Imgproc.INTER_LINEAR,
                Core.BORDER_CONSTANT,
                Scalar.all(0));
        toInput.release();
    }

    /** A point given as shares of the square's side, in the picture. */
    PixelPoint toPicture(double xShare, double yShare) {
        return new PixelPoint(left + xShare * side, top + yShare * side);
    }
}
