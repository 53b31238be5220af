package floorgauge.court.floor;

/**
 * A point in the picture: pixels of the film as stored, the centre of the top left pixel at (0, 0).
 *
 * @param x to the right, finite; may lie outside the picture
 * @param y down, finite; may lie outside the picture
 */
public record PixelPoint(double x, double y) {

    public PixelPoint {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("picture point must be finite: (" + x + ", " + y + ")");
        }
    }

    /** Distance in pixels. */
    public double distanceTo(PixelPoint other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
