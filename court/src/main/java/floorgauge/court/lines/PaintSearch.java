package floorgauge.court.lines;

import java.util.List;
import java.util.OptionalDouble;

/** Finds paint across a place where a line is expected. */
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

    /**
     * The weight of those places that share one colour of paint, the colour that most have: a court is painted from one
     * can, lines of several sports are not.
     *
     * @param places at which this search found paint
     * @return from 0 to the sum of their weights
     */
    double weightOfOneColour(List<PaintPlace> places);
}
