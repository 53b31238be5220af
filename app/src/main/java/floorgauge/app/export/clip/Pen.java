package floorgauge.app.export.clip;

import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Point;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;

/**
 * Draws lines with soft edges onto a picture, at parts of a pixel. Sizes are in units of a picture 720 pixels high, so that a
 * drawing looks the same on any film.
 *
 * @param picture 8-bit BGR
 * @param scale pixels a unit
 */
record Pen(Mat picture, double scale) {

    /** OpenCV takes whole numbers of sixteenths of a pixel. */
    private static final int SHIFT = 4;

    private static final double SIXTEENTHS = 1 << SHIFT;

    /** Coordinates beyond this overflow the library's arithmetic; nothing so far out is seen. */
    private static final double MOST_PIXELS = 16_000;

    /** A line of some width in units. */
    void line(double x1, double y1, double x2, double y2, double width, Scalar colour) {
        if (drawable(x1, y1) && drawable(x2, y2)) {
            Imgproc.line(picture, point(x1, y1), point(x2, y2), colour, thickness(width), Imgproc.LINE_AA, SHIFT);
        }
    }

    /** The outline of a closed shape. */
    void outline(List<double[]> corners, double width, Scalar colour) {
        for (int i = 0; i < corners.size(); i++) {
            double[] a = corners.get(i);
            double[] b = corners.get((i + 1) % corners.size());
            line(a[0], a[1], b[0], b[1], width, colour);
        }
    }

    /** A filled convex shape. */
    void fill(List<double[]> corners, Scalar colour) {
        if (!corners.stream().allMatch(c -> drawable(c[0], c[1]))) {
            return;
        }
        MatOfPoint shape =
                new MatOfPoint(corners.stream().map(c -> point(c[0], c[1])).toArray(Point[]::new));
        try {
            Imgproc.fillConvexPoly(picture, shape, colour, Imgproc.LINE_AA, SHIFT);
        } finally {
            shape.release();
        }
    }

    /** A filled rectangle. */
    void box(double left, double top, double right, double bottom, Scalar colour) {
        Imgproc.rectangle(
                picture,
                new Point(Math.round(left), Math.round(top)),
                new Point(Math.round(right), Math.round(bottom)),
                colour,
                Imgproc.FILLED);
    }

    /** Units as pixels. */
    double units(double units) {
        return units * scale;
    }

    private int thickness(double width) {
        return (int) Math.max(1, Math.round(width * scale));
    }

    private static boolean drawable(double x, double y) {
        return Math.abs(x) < MOST_PIXELS && Math.abs(y) < MOST_PIXELS;
    }

    private static Point point(double x, double y) {
        return new Point(Math.round(x * SIXTEENTHS), Math.round(y * SIXTEENTHS));
    }
}
