package floorgauge.vision.number;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.vision.network.NumberReader;
import java.util.Optional;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * A torso that shows its chest or its back, as the number reader was trained to see it (models/training/drawn_numbers.py): a
 * square turned upright along the line from the hips' middle to the shoulders', its side a share of that line.
 *
 * @param hips the hips' middle, pixels
 * @param shoulders the shoulders' middle, pixels
 */
public record TorsoCrop(PixelPoint hips, PixelPoint shoulders) {

    /** The square's side over the line's length. */
    private static final double SIDE_TORSOS = 1.25;

    /** The square's middle lies above the line's by this share of it. */
    private static final double RAISED = 0.05;

    /** Joints that score less are guesses. */
    private static final double LEAST_SCORE = 0.3;

    /** On a shorter torso the digits of a back, two fifths of it high, are below eight pixels. */
    private static final double LEAST_PIXELS = 18;

    /**
     * Shoulders narrower than this share of the torso are seen from the side. Upright, they measure three quarters of it
     * (R. Drillis and R. Contini, "Body segment parameters", 1966; from memory).
     */
    private static final double LEAST_WIDTH = 0.3;

    /** A larger reduction than this averages first, or thin strokes would vanish between the samples. */
    private static final double MOST_REDUCTION = 1.5;

    /** The torso of a pose; empty where it is hidden, seen from the side, or too small for a number. */
    public static Optional<TorsoCrop> of(Pose pose) {
        Keypoint left = pose.at(Joint.LEFT_SHOULDER);
        Keypoint right = pose.at(Joint.RIGHT_SHOULDER);
        Keypoint leftHip = pose.at(Joint.LEFT_HIP);
        Keypoint rightHip = pose.at(Joint.RIGHT_HIP);
        if (Math.min(Math.min(left.score(), right.score()), Math.min(leftHip.score(), rightHip.score()))
                < LEAST_SCORE) {
            return Optional.empty();
        }
        TorsoCrop crop = new TorsoCrop(
                middle(leftHip.position(), rightHip.position()), middle(left.position(), right.position()));
        double length = distance(crop.hips, crop.shoulders);
        boolean wide = distance(left.position(), right.position()) >= LEAST_WIDTH * length;
        return length >= LEAST_PIXELS && wide ? Optional.of(crop) : Optional.empty();
    }

    private static PixelPoint middle(PixelPoint a, PixelPoint b) {
        return new PixelPoint((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    }

    private static double distance(PixelPoint a, PixelPoint b) {
        return Math.hypot(a.x() - b.x(), a.y() - b.y());
    }

    /**
     * Cuts the square out; beyond the picture its edge goes on.
     *
     * @param bgr the picture
     * @param input {@link NumberReader#SIDE} square, overwritten
     */
    public void cut(Mat bgr, Mat input) {
        double side = SIDE_TORSOS * distance(hips, shoulders);
        int times = (int) Math.ceil(side / NumberReader.SIDE / MOST_REDUCTION);
        if (times <= 1) {
            warp(bgr, input, side);
            return;
        }
        Mat large = new Mat(times * NumberReader.SIDE, times * NumberReader.SIDE, CvType.CV_8UC3);
        warp(bgr, large, side);
        Imgproc.resize(large, input, input.size(), 0, 0, Imgproc.INTER_AREA);
        large.release();
    }

    private void warp(Mat bgr, Mat input, double side) {
        double length = distance(hips, shoulders);
        double upX = (shoulders.x() - hips.x()) / length;
        double upY = (shoulders.y() - hips.y()) / length;
        double step = side / input.cols();
        double middleX = (hips.x() + shoulders.x()) / 2 + RAISED * length * upX;
        double middleY = (hips.y() + shoulders.y()) / 2 + RAISED * length * upY;
        double half = (input.cols() - 1) / 2.0;
        // Input columns run to the right of the body's way up, rows against it.
        Mat toPicture = new Mat(2, 3, CvType.CV_64F);
        toPicture.put(
                0,
                0,
                -upY * step,
                -upX * step,
                middleX + half * step * (upY + upX),
                upX * step,
                -upY * step,
                middleY - half * step * (upX - upY));
        Imgproc.warpAffine(
                bgr,
                input,
                toPicture,
                new Size(input.cols(), input.rows()),
                Imgproc.INTER_LINEAR | Imgproc.WARP_INVERSE_MAP,
                Core.BORDER_REPLICATE);
        toPicture.release();
    }
}
