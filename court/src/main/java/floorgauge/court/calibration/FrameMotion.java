package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfFloat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Point;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import org.opencv.video.Video;

/**
 * How a camera turned and zoomed between two pictures: corners of the hall followed from one to the other, and the
 * homography that most of them agree on. A camera that turns about its own centre moves the whole hall by one homography,
 * whatever its depth; people who move agree with nothing.
 *
 * <p>Sources: Shi and Tomasi, Good features to track (CVPR 1994); Bouguet, Pyramidal implementation of the Lucas Kanade
 * feature tracker (2000); Fischler and Bolles, Random sample consensus (CACM 24, 1981).
 *
 * <p>Owns a grey picture; close it. Not safe for use by several threads.
 */
final class FrameMotion implements AutoCloseable {

    /** Pictures are brought to this width: motion is smooth, so that fine detail adds nothing. */
    private static final int WIDTH = 640;

    private static final int MOST_CORNERS = 220;
    private static final int FEWEST_CORNERS = 110;
    private static final double CORNER_QUALITY = 0.01;
    private static final double CORNER_DISTANCE = 10;
    private static final double INLIER_PIXELS = 1.0;
    private static final int ITERATIONS = 400;
    private static final double CONFIDENCE = 0.995;

    /** With a smaller share of the corners in agreement, the picture is of something else: a cut, or a blur. */
    private static final double LEAST_SHARE = 0.35;

    private static final int LEAST_INLIERS = 14;

    private Mat before = new Mat();
    private Mat now = new Mat();
    private MatOfPoint2f corners = new MatOfPoint2f();

    /**
     * @param beforeToNow from the ideal picture before to that now, pixels of the film
     * @param agreement share of the followed corners that agree, 0 to 1
     */
    record Motion(Homography beforeToNow, double agreement) {}

    /**
     * Looks at the next picture.
     *
     * @param bgr 8 bits, BGR; left unchanged
     * @param lens of the film
     * @return the motion since the last call; empty for the first picture, and where the two show no common scene
     */
    Optional<Motion> next(Mat bgr, Lens lens) {
        Mat spare = before;
        before = now;
        now = spare;
        double scale = Math.min(1, (double) WIDTH / bgr.cols());
        shrink(bgr, now, scale);
        if (before.empty()) {
            return Optional.empty();
        }
        if (corners.rows() < FEWEST_CORNERS) {
            findCorners(before);
        }
        Optional<Motion> motion = follow(lens, scale);
        if (motion.isEmpty()) {
            corners.release();
        }
        return motion;
    }

    private static void shrink(Mat bgr, Mat to, double scale) {
        Mat small = new Mat();
        try {
            Imgproc.resize(bgr, small, new Size(), scale, scale, Imgproc.INTER_AREA);
            Imgproc.cvtColor(small, to, Imgproc.COLOR_BGR2GRAY);
        } finally {
            small.release();
        }
    }

    private void findCorners(Mat grey) {
        MatOfPoint found = new MatOfPoint();
        try {
            Imgproc.goodFeaturesToTrack(grey, found, MOST_CORNERS, CORNER_QUALITY, CORNER_DISTANCE);
            corners.release();
            if (found.rows() > 0) {
                found.convertTo(corners, CvType.CV_32F);
            }
        } finally {
            found.release();
        }
    }

    private Optional<Motion> follow(Lens lens, double scale) {
        if (corners.rows() < LEAST_INLIERS) {
            return Optional.empty();
        }
        MatOfPoint2f moved = new MatOfPoint2f();
        MatOfByte seen = new MatOfByte();
        MatOfFloat error = new MatOfFloat();
        try {
            Video.calcOpticalFlowPyrLK(before, now, corners, moved, seen, error, new Size(15, 15), 4);
            return agreed(corners.toArray(), moved.toArray(), seen.toArray(), lens, scale);
        } finally {
            moved.release();
            seen.release();
            error.release();
        }
    }

    private Optional<Motion> agreed(Point[] from, Point[] to, byte[] seen, Lens lens, double scale) {
        List<Point> a = new ArrayList<>();
        List<Point> b = new ArrayList<>();
        List<Point> kept = new ArrayList<>();
        for (int i = 0; i < from.length; i++) {
            Optional<PixelPoint> p = ideal(from[i], lens, scale);
            Optional<PixelPoint> q = ideal(to[i], lens, scale);
            if (seen[i] != 0 && p.isPresent() && q.isPresent() && inPicture(to[i])) {
                a.add(new Point(p.get().x(), p.get().y()));
                b.add(new Point(q.get().x(), q.get().y()));
                kept.add(to[i]);
            }
        }
        if (a.size() < LEAST_INLIERS) {
            return Optional.empty();
        }
        MatOfPoint2f first = new MatOfPoint2f(a.toArray(new Point[0]));
        MatOfPoint2f second = new MatOfPoint2f(b.toArray(new Point[0]));
        Mat inliers = new Mat();
        Mat h = Calib3d.findHomography(
                first, second, Calib3d.RANSAC, INLIER_PIXELS / scale, inliers, ITERATIONS, CONFIDENCE);
        try {
            int agree = h.empty() ? 0 : Core.countNonZero(inliers);
            double share = (double) agree / from.length;
            if (agree < LEAST_INLIERS || share < LEAST_SHARE) {
                return Optional.empty();
            }
            keep(kept, inliers);
            double[] entries = new double[9];
            h.get(0, 0, entries);
            return Optional.of(new Motion(Homography.of(entries), share));
        } finally {
            first.release();
            second.release();
            inliers.release();
            h.release();
        }
    }

    /** Corners that agree are followed on; the others lie on people, or were lost. */
    private void keep(List<Point> moved, Mat inliers) {
        List<Point> on = new ArrayList<>();
        byte[] flags = new byte[moved.size()];
        inliers.get(0, 0, flags);
        for (int i = 0; i < flags.length; i++) {
            if (flags[i] != 0) {
                on.add(moved.get(i));
            }
        }
        corners.fromList(on);
    }

    private boolean inPicture(Point p) {
        return p.x >= 0 && p.y >= 0 && p.x <= now.cols() - 1 && p.y <= now.rows() - 1;
    }

    private static Optional<PixelPoint> ideal(Point small, Lens lens, double scale) {
        return lens.straighten(new PixelPoint((small.x + 0.5) / scale - 0.5, (small.y + 0.5) / scale - 0.5));
    }

    @Override
    public void close() {
        before.release();
        now.release();
        corners.release();
    }
}
