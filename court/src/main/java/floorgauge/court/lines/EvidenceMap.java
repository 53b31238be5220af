package floorgauge.court.lines;

import java.util.List;
import java.util.stream.IntStream;
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

    /** Distances are kept in these parts of a pixel: several maps of a picture are alive at once. */
    private static final float PARTS = 256;

    private static final int MOST = Character.MAX_VALUE;

    /** How common paint is changes slowly over the picture: it is told once for a cell of so many pixels each way. */
    private static final int CELL = 4;

    private final int width;
    private final int height;
    private final int columns;
    private final int rows;

    /** In parts of a pixel, up to where no paint is near anyway. */
    private final char[] distance;

    /** Of every bin and cell. */
    private final float[] chance;

    private final double tolerance;

    /**
     * @param points ridge points of a picture of this size
     * @param tolerance in pixels: how near paint must be to count as a match
     */
    public EvidenceMap(List<RidgePoint> points, int width, int height, double tolerance) {
        this(width, height, distances(points, width, height), tolerance);
    }

    private EvidenceMap(int width, int height, char[] distance, double tolerance) {
        this.width = width;
        this.height = height;
        this.tolerance = tolerance;
        this.distance = distance;
        this.columns = (width + CELL - 1) / CELL;
        this.rows = (height + CELL - 1) / CELL;
        this.chance = new float[BINS * columns * rows];
        IntStream.range(0, BINS).parallel().forEach(this::countMatches);
    }

    /** The same paint, where it must be this near to count as a match. */
    public EvidenceMap withTolerance(double pixels) {
        return new EvidenceMap(width, height, distance, pixels);
    }

    private static char[] distances(List<RidgePoint> points, int width, int height) {
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
        char[] distance = new char[BINS * width * height];
        // Each bin fills its own part: the result does not hang on which thread does which.
        IntStream.range(0, BINS).parallel().forEach(bin -> measure(empty[bin], width, height, bin, distance));
        return distance;
    }

    private static void measure(byte[] empty, int width, int height, int bin, char[] distance) {
        Mat mask = new Mat(height, width, CvType.CV_8U);
        Mat far = new Mat();
        try {
            mask.put(0, 0, empty);
            Imgproc.distanceTransform(mask, far, Imgproc.DIST_L2, Imgproc.DIST_MASK_3);
            float[] values = new float[width * height];
            far.get(0, 0, values);
            for (int i = 0; i < values.length; i++) {
                distance[bin * values.length + i] = (char) Math.min(MOST, Math.round(PARTS * values[i]));
            }
        } finally {
            mask.release();
            far.release();
        }
    }

    private static double[] tangents() {
        double[] tangents = new double[BINS / 2 - 1];
        for (int i = 0; i < tangents.length; i++) {
            tangents[i] = Math.tan((i + 1) * Math.PI / BINS);
        }
        return tangents;
    }

    private void countMatches(int bin) {
        float[] shares = new float[columns * rows];
        double nearest = PARTS * tolerance;
        for (int y = 0; y < height; y++) {
            int from = (bin * height + y) * width;
            for (int x = 0; x < width; x++) {
                shares[y / CELL * columns + x / CELL] += distance[from + x] <= nearest ? 1 : 0;
            }
        }
        for (int i = 0; i < shares.length; i++) {
            int cellWidth = Math.min(CELL, width - i % columns * CELL);
            int cellHeight = Math.min(CELL, height - i / columns * CELL);
            shares[i] /= cellWidth * cellHeight;
        }
        Mat share = new Mat(rows, columns, CvType.CV_32F);
        try {
            share.put(0, 0, shares);
            double window = Math.max(15, width / 8) / CELL;
            Imgproc.boxFilter(share, share, -1, new Size(window, window));
            share.get(0, 0, shares);
            System.arraycopy(shares, 0, chance, bin * shares.length, shares.length);
        } finally {
            share.release();
        }
    }

    /**
     * The bin of a direction, 0 along x, growing towards y; a direction and its opposite share one. By comparison instead of
     * by angle: this is asked some million times for each picture.
     */
    public static int bin(double directionX, double directionY) {
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

    /** Distance in pixels to the next paint along a direction of this {@link #bin}, at most 256; the place must lie inside. */
    public double distance(double x, double y, int bin) {
        return distance[(bin * height + (int) (y + 0.5)) * width + (int) (x + 0.5)] / PARTS;
    }

    /** The share of places about here that would match a direction of this {@link #bin} by chance; the place must lie inside. */
    public double chance(double x, double y, int bin) {
        return chance[(bin * rows + (int) (y + 0.5) / CELL) * columns + (int) (x + 0.5) / CELL];
    }

    public double tolerance() {
        return tolerance;
    }
}
