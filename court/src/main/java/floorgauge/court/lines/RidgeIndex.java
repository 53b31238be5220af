package floorgauge.court.lines;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Finds the ridge point across a given place: for measuring how far paint lies from where it is expected. */
public final class RidgeIndex implements PaintSearch {

    private static final double SAME_DIRECTION = Math.cos(Math.toRadians(14));

    /** Paint that was found is looked up again this near: its middle lies within a pixel of the one that holds it. */
    private static final double SAME_PAINT_PIXELS = 2;

    private final RidgePoint[] at;
    private final int width;
    private final int height;

    /** @param points ridge points of a picture of this size */
    public RidgeIndex(List<RidgePoint> points, int width, int height) {
        this.width = width;
        this.height = height;
        this.at = new RidgePoint[width * height];
        for (RidgePoint p : points) {
            int column = (int) Math.max(0, Math.min(width - 1, Math.round(p.x())));
            int row = (int) Math.max(0, Math.min(height - 1, Math.round(p.y())));
            RidgePoint there = at[row * width + column];
            if (there == null || there.strength() < p.strength()) {
                at[row * width + column] = p;
            }
        }
    }

    /** The nearest ridge point of the same direction, of any width. */
    @Override
    public OptionalDouble across(
            double x, double y, double normalX, double normalY, double widthPixels, double reachPixels) {
        RidgePoint found = find(x, y, normalX, normalY, reachPixels);
        return found == null
                ? OptionalDouble.empty()
                : OptionalDouble.of((found.x() - x) * normalX + (found.y() - y) * normalY);
    }

    @Override
    public double weightOfOneColour(List<PaintPlace> places) {
        List<RidgePoint> paint = new ArrayList<>();
        for (PaintPlace place : places) {
            RidgePoint found = find(place.x(), place.y(), place.normalX(), place.normalY(), SAME_PAINT_PIXELS);
            if (found != null) {
                paint.add(found.withStrength(place.weight()));
            }
        }
        return paint.isEmpty() ? 0 : PaintColour.mostCommon(paint).weight();
    }

    /** The nearest ridge point of the same direction; null where there is none. */
    RidgePoint find(double x, double y, double normalX, double normalY, double reachPixels) {
        RidgePoint best = null;
        double nearest = reachPixels;
        int steps = (int) Math.ceil(reachPixels / 0.7);
        for (int i = -steps; i <= steps; i++) {
            double along = reachPixels * i / steps;
            int column = (int) Math.round(x + along * normalX);
            int row = (int) Math.round(y + along * normalY);
            if (column >= 0 && row >= 0 && column < width && row < height) {
                RidgePoint p = at[row * width + column];
                if (p != null && Math.abs(p.normalX() * normalX + p.normalY() * normalY) >= SAME_DIRECTION) {
                    double distance = Math.abs((p.x() - x) * normalX + (p.y() - y) * normalY);
                    if (distance <= nearest) {
                        nearest = distance;
                        best = p;
                    }
                }
            }
        }
        return best;
    }
}
