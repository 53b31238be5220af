package floorgauge.court.lines;

/**
 * A place in the picture where a line of the court met paint.
 *
 * @param x pixels
 * @param y pixels
 * @param normalX unit vector across the line
 * @param normalY unit vector across the line
 * @param weight how much of the line it stands for, above 0
 */
public record PaintPlace(double x, double y, double normalX, double normalY, double weight) {}
