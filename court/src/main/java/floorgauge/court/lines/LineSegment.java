package floorgauge.court.lines;

/**
 * A straight run of ridge points.
 *
 * @param x1 first end, working picture
 * @param y1 first end
 * @param x2 second end
 * @param y2 second end
 * @param points how many ridge points it was fitted to
 */
public record LineSegment(double x1, double y1, double x2, double y2, int points) {

    public double length() {
        return Math.hypot(x2 - x1, y2 - y1);
    }

    public double middleX() {
        return (x1 + x2) / 2;
    }

    public double middleY() {
        return (y1 + y2) / 2;
    }
}
