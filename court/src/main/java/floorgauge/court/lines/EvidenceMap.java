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

    private final int width;
    private final int height;
    private final float[][] distance = new float[BINS][];
    private final float[][] chance = new float[BINS][];
    private final double tolerance;

    /**
     * @param points ridge points of a picture of this size
     * @param tolerance in pixels: how near paint must be to count as a match
     */
    public EvidenceMap(List<RidgePoint> points, int width, int height, double tolerance) {
        this.width = width;
        this.height = height;
        this.tolerance = tolerance;
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

    private void fill(int bin, byte[] empty) {
        Mat mask = new Mat(height, width, CvType.CV_8U);
        Mat far = new Mat();
        try {
            mask.put(0, 0, empty);
            Imgproc.distanceTransform(mask, far, Imgproc.DIST_L2, Imgproc.DIST_MASK_3);
            distance[bin] = new float[width * height];
            far.get(0, 0, distance[bin]);
            byte[] hit = new byte[width * height];
            for (int i = 0; i < hit.length; i++) {
                hit[i] = (byte) (distance[bin][i] <= tolerance ? 1 : 0);
            }
            mask.put(0, 0, hit);
            mask.convertTo(far, CvType.CV_32F);
            double window = Math.max(15, width / 8);
            Imgproc.boxFilter(far, far, -1, new Size(window, window));
            chance[bin] = new float[width * height];
            far.get(0, 0, chance[bin]);
        } finally {
            mask.release();
            far.release();
        }
    }

    private static int bin(double directionX, double directionY) {
        double turn = Math.atan2(directionY, directionX) / Math.PI;
        return Math.floorMod((int) Math.floor((turn - Math.floor(turn)) * BINS), BINS);
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

    /** Distance in pixels to the next paint along the direction; the place must lie inside. */
    public double distance(double x, double y, double directionX, double directionY) {
        return distance[bin(directionX, directionY)][(int) Math.round(y) * width + (int) Math.round(x)];
    }

    /** The share of places about here that would match by chance, 0 to 1; the place must lie inside. */
    public double chance(double x, double y, double directionX, double directionY) {
        return chance[bin(directionX, directionY)][(int) Math.round(y) * width + (int) Math.round(x)];
    }

    public double tolerance() {
        return tolerance;
    }
}
