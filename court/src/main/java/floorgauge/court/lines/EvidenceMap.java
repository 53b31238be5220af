package floorgauge.court.lines;

import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * For any place and direction in the picture: how far the next paint of about that direction lies, and how common such
 * paint is thereabouts, which tells a match from chance. Immutable once built.
 */
public final class EvidenceMap {

    /** Directions are told apart in this many bins over half a turn. */
    private static final int BINS = 12;

    /** Tangents of the borders between the bins of the first quadrant. */
    private static final double[] TANGENTS = tangents();

    private final int width;
    private final int height;
    private final float[] distance;
    private final float[] chance;
    private final double tolerance;

    /**
     * @param points ridge points of a picture of this size
     * @param tolerance in pixels: how near paint must be to count as a match
     */
    public EvidenceMap(List<RidgePoint> points, int width, int height, double tolerance) {
        this.width = width;
        this.height = height;
        this.tolerance = tolerance;
        this.distance = new float[BINS * width * height];
        this.chance = new float[BINS * width * height];
        byte[][] empty = new byte[BINS][width * height];
        for (byte[] bin : empty) {
            java.util.Arrays.fill(bin, (byte) 1);
        }
        for (RidgePoint p : points) {
            int column = (int) Math.max(0, Math.min(width - 1, Math.round(p.x())));
            int row = (int) Math.max(0, Math.min(height - 1, Math.round(p.y())));
            int bin = bin(-p.normalY(), p.normalX());
            for (int near = -1; near <= 1; near++) {
                empty[Math.floorMod(bin + near, BINS)][row * width + column] = 0;
            }
        }
        for (int bin = 0; bin < BINS; bin++) {
            fill(bin, empty[bin]);
        }
    }

    private static double[] tangents() {
        double[] tangents = new double[BINS / 2 - 1];
        for (int i = 0; i < tangents.length; i++) {
            tangents[i] = Math.tan((i + 1) * Math.PI / BINS);
        }
        return tangents;
    }

    private void fill(int bin, byte[] empty) {
        Mat mask = new Mat(height, width, CvType.CV_8U);
        Mat far = new Mat();
        try {
            mask.put(0, 0, empty);
            Imgproc.distanceTransform(mask, far, Imgproc.DIST_L2, Imgproc.DIST_MASK_3);
            float[] values = new float[width * height];
            far.get(0, 0, values);
            System.arraycopy(values, 0, distance, bin * values.length, values.length);
            byte[] hit = new byte[width * height];
            for (int i = 0; i < hit.length; i++) {
                hit[i] = (byte) (values[i] <= tolerance ? 1 : 0);
            }
            mask.put(0, 0, hit);
            mask.convertTo(far, CvType.CV_32F);
            double window = Math.max(15, width / 8);
            Imgproc.boxFilter(far, far, -1, new Size(window, window));
            far.get(0, 0, values);
            System.arraycopy(values, 0, chance, bin * values.length, values.length);
        } finally {
            mask.release();
            far.release();
        }
    }

    /**
     * The bin of a direction, 0 along x, growing towards y; a direction and its opposite share one. By comparison instead of
     * by angle: this is asked some million times for each picture.
     */
    static int bin(double directionX, double directionY) {
        // Turned into the upper half plane, then into the first quadrant.
        boolean flip = directionY < 0 || directionY == 0 && directionX < 0;
        double x = flip ? -directionX : directionX;
        double y = flip ? -directionY : directionY;
        if (x > 0) {
            return inQuadrant(y, x);
        }
        return BINS / 2 + inQuadrant(-x, y);
    }

    /** 0 to 5 by the angle whose tangent is {@code rise / run}, in steps of 15 degrees. */
    private static int inQuadrant(double rise, double run) {
        int bin = 0;
        while (bin < BINS / 2 - 1 && rise >= TANGENTS[bin] * run) {
            bin++;
        }
        return bin;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** Whether the place lies in the picture. */
    public boolean inside(double x, double y) {
        return x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1;
    }

    /** Where a place and direction stand in the tables of {@link #distance} and {@link #chance}; the place lies inside. */
    public int entry(double x, double y, double directionX, double directionY) {
        return bin(directionX, directionY) * width * height + (int) (y + 0.5) * width + (int) (x + 0.5);
    }

    /** Distance in pixels to the next paint along the direction of an {@link #entry}. */
    public double distance(int entry) {
        return distance[entry];
    }

    /** The share of places about an {@link #entry} that would match by chance, 0 to 1. */
    public double chance(int entry) {
        return chance[entry];
    }

    /** Distance in pixels to the next paint along the direction; the place must lie inside. */
    public double distance(double x, double y, double directionX, double directionY) {
        return distance(entry(x, y, directionX, directionY));
    }

    /** The share of places about here that would match by chance, 0 to 1; the place must lie inside. */
    public double chance(double x, double y, double directionX, double directionY) {
        return chance(entry(x, y, directionX, directionY));
    }

    public double tolerance() {
        return tolerance;
    }
}
