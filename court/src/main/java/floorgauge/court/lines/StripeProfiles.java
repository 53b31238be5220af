package floorgauge.court.lines;

import java.util.List;
import java.util.OptionalDouble;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Finds paint of a known look near where it must be, without looking at the rest of the picture: the picture is brought to
 * one channel along the paint's contrast, and across each expected line the stripe is the place that stands out most from
 * both of its sides.
 *
 * <p>Much faster than {@link RidgeFinder}, for pictures that follow one another. Not safe for use by several threads.
 */
public final class StripeProfiles implements PaintSearch {

    /** A stripe must stand out by this share of what the paint does where it is plain to see. */
    private static final double LEAST_CONTRAST = 0.3;

    private static final double SMOOTHING = 0.8;

    /** Profiles are read at steps of this many pixels. */
    private static final double STEP = 0.5;

    private final int width;
    private final int height;
    private final float[] values;
    private final double least;
    private double[] profile = new double[64];

    /**
     * How paint differs from the floor beside it.
     *
     * @param blue of 255
     * @param green of 255
     * @param red of 255
     */
    public record Contrast(double blue, double green, double red) {

        double length() {
            return Math.sqrt(blue * blue + green * green + red * red);
        }
    }

    /**
     * @param bgr 8 bits, BGR; left unchanged
     * @param contrast of the paint, not zero
     */
    public StripeProfiles(Mat bgr, Contrast contrast) {
        double length = contrast.length();
        if (!(length > 0)) {
            throw new IllegalArgumentException("paint without contrast cannot be found");
        }
        this.width = bgr.cols();
        this.height = bgr.rows();
        this.least = LEAST_CONTRAST * length;
        this.values =
                alongContrast(bgr, (float) (contrast.blue() / length), (float) (contrast.green() / length), (float)
                        (contrast.red() / length));
        Mat single = new Mat(height, width, CvType.CV_32F);
        try {
            single.put(0, 0, values);
            Imgproc.GaussianBlur(single, single, new Size(0, 0), SMOOTHING);
            single.get(0, 0, values);
        } finally {
            single.release();
        }
    }

    /** One channel in a single pass: OpenCV would bring the picture to three channels of floats first. */
    private static float[] alongContrast(Mat bgr, float blue, float green, float red) {
        byte[] pixels = new byte[3 * bgr.cols() * bgr.rows()];
        bgr.get(0, 0, pixels);
        float[] along = new float[pixels.length / 3];
        for (int i = 0, p = 0; i < along.length; i++, p += 3) {
            along[i] = blue * (pixels[p] & 0xff) + green * (pixels[p + 1] & 0xff) + red * (pixels[p + 2] & 0xff);
        }
        return along;
    }

    @Override
    public OptionalDouble across(
            double x, double y, double normalX, double normalY, double widthPixels, double reachPixels) {
        double beside = Math.max(2, widthPixels + 1.5);
        int side = (int) Math.ceil(beside / STEP);
        int reach = (int) Math.ceil(reachPixels / STEP);
        int size = 2 * (reach + side) + 1;
        if (profile.length < size) {
            profile = new double[2 * size];
        }
        double farthest = (reach + side) * STEP;
        if (!inside(x - farthest * normalX, y - farthest * normalY)
                || !inside(x + farthest * normalX, y + farthest * normalY)) {
            return OptionalDouble.empty();
        }
        for (int i = 0; i < size; i++) {
            double at = (i - reach - side) * STEP;
            profile[i] = value(x + at * normalX, y + at * normalY);
        }
        int best = -1;
        double most = least;
        for (int i = side; i < size - side; i++) {
            double own = standsOut(i, side);
            if (own > most) {
                most = own;
                best = i;
            }
        }
        if (best <= side || best >= size - side - 1) {
            return OptionalDouble.empty();
        }
        double before = standsOut(best - 1, side);
        double after = standsOut(best + 1, side);
        double curve = before - 2 * most + after;
        double shift = curve < 0 ? Math.max(-0.5, Math.min(0.5, 0.5 * (before - after) / curve)) : 0;
        return OptionalDouble.of((best - reach - side + shift) * STEP);
    }

    /** All of it: only the one contrast is looked for. */
    @Override
    public double weightOfOneColour(List<PaintPlace> places) {
        return places.stream().mapToDouble(PaintPlace::weight).sum();
    }

    /** Over the higher of both sides, so that an edge is no stripe. */
    private double standsOut(int i, int side) {
        return profile[i] - Math.max(profile[i - side], profile[i + side]);
    }

    private boolean inside(double x, double y) {
        return x >= 0 && y >= 0 && x <= width - 1.001 && y <= height - 1.001;
    }

    private double value(double x, double y) {
        int column = (int) x;
        int row = (int) y;
        double fx = x - column;
        double fy = y - row;
        int at = row * width + column;
        double upper = values[at] + fx * (values[at + 1] - values[at]);
        double lower = values[at + width] + fx * (values[at + width + 1] - values[at + width]);
        return upper + fy * (lower - upper);
    }

    /** How a stripe at a place differs from its two sides in a picture; for learning a contrast. */
    public static Contrast contrastAt(Mat bgr, double x, double y, double normalX, double normalY, double widthPixels) {
        double beside = Math.max(2, widthPixels + 1.5);
        double[] here = pixel(bgr, x, y);
        double[] left = pixel(bgr, x - beside * normalX, y - beside * normalY);
        double[] right = pixel(bgr, x + beside * normalX, y + beside * normalY);
        return new Contrast(
                here[0] - (left[0] + right[0]) / 2,
                here[1] - (left[1] + right[1]) / 2,
                here[2] - (left[2] + right[2]) / 2);
    }

    private static double[] pixel(Mat bgr, double x, double y) {
        int column = (int) Math.max(0, Math.min(bgr.cols() - 1, Math.round(x)));
        int row = (int) Math.max(0, Math.min(bgr.rows() - 1, Math.round(y)));
        return bgr.get(row, column);
    }
}
