package floorgauge.court.lines;

import java.util.OptionalDouble;

/** Finds paint across a place where a line is expected. */
@FunctionalInterface
public interface PaintSearch {

    /**
     * Signed distance along the unit normal from a place to the middle of the nearest stripe that runs across the normal;
     * empty where there is none within reach.
     *
     * @param x pixels
     * @param y pixels
     * @param normalX unit vector across the expected line
     * @param normalY unit vector across the expected line
     * @param widthPixels how wide the stripe should be, above 0
     * @param reachPixels how far to look to either side
     */
    OptionalDouble across(double x, double y, double normalX, double normalY, double widthPixels, double reachPixels);
}
