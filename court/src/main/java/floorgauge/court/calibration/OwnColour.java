package floorgauge.court.calibration;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.lines.PaintColour;
import floorgauge.court.lines.RidgePoint;
import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How much of the paint on a court's floor, of the colour that the court has, the court explains. Lines of another sport
 * taken for a court's leave that sport's other lines beside them; a court in its place leaves next to none.
 */
final class OwnColour {

    /** Lines of the floor beyond the court are others' business; its own border lies within. */
    private static final double MARGIN_METRES = 0.3;

    private static final double SAME_DIRECTION = Math.cos(Math.toRadians(20));

    private final FloorProjection projection;
    private final double reach;
    private final int columns;
    private final int[] firstInCell;
    private final List<RidgePoint> line = new ArrayList<>();
    private final List<Integer> nextInCell = new ArrayList<>();

    private OwnColour(CourtSamples samples, FloorProjection projection, int width, int height, double reach) {
        this.projection = projection;
        this.reach = reach;
        this.columns = (int) (width / reach) + 1;
        this.firstInCell = new int[columns * ((int) (height / reach) + 1)];
        Arrays.fill(firstInCell, -1);
        for (int i = 0; i < samples.size(); i++) {
            draw(samples, i, width, height);
        }
    }

    /**
     * The share, by strength.
     *
     * @param paint ridge points of a picture of this size
     * @param reachPixels how far from a line's middle its paint may lie
     * @return 0 to 1; 0 where no paint lies on the court's lines
     */
    static double explainedShare(
            RuleSet rules,
            CourtSamples samples,
            FloorProjection projection,
            List<RidgePoint> paint,
            int width,
            int height,
            double reachPixels) {
        OwnColour lines = new OwnColour(samples, projection, width, height, reachPixels);
        List<RidgePoint> explained = new ArrayList<>();
        List<RidgePoint> others = new ArrayList<>();
        for (RidgePoint point : paint) {
            if (lines.onCourt(point, rules)) {
                (lines.explain(point) ? explained : others).add(point);
            }
        }
        if (explained.isEmpty()) {
            return 0;
        }
        PaintColour own = PaintColour.mostCommon(explained);
        double onLines = strength(explained, own);
        return onLines / (onLines + strength(others, own));
    }

    private static double strength(List<RidgePoint> points, PaintColour colour) {
        return points.stream()
                .filter(colour::holds)
                .mapToDouble(RidgePoint::strength)
                .sum();
    }

    /** Notes places along a piece of a line, no farther from each other than the reach wherever it is a court's. */
    private void draw(CourtSamples samples, int i, int width, int height) {
        double half = samples.spacing[i] / 2;
        Optional<PixelPoint> from = projection.toFilm(
                samples.x[i] - half * samples.directionX[i], samples.y[i] - half * samples.directionY[i]);
        Optional<PixelPoint> to = projection.toFilm(
                samples.x[i] + half * samples.directionX[i], samples.y[i] + half * samples.directionY[i]);
        if (from.isEmpty() || to.isEmpty()) {
            return;
        }
        double dx = to.get().x() - from.get().x();
        double dy = to.get().y() - from.get().y();
        double length = Math.hypot(dx, dy);
        // Near the horizon a piece of a far-fetched court is longer than any picture.
        int steps = (int) Math.ceil(Math.min(length, width + height) / reach);
        for (int step = 0; step < steps; step++) {
            double x = from.get().x() + dx * (step + 0.5) / steps;
            double y = from.get().y() + dy * (step + 0.5) / steps;
            if (x >= 0 && y >= 0 && x < width && y < height) {
                int cell = (int) (y / reach) * columns + (int) (x / reach);
                nextInCell.add(firstInCell[cell]);
                firstInCell[cell] = line.size();
                line.add(new RidgePoint(x, y, -dy / length, dx / length, 1, 0, 0, 0));
            }
        }
    }

    private boolean onCourt(RidgePoint point, RuleSet rules) {
        Optional<FloorPoint> floor = projection.toFloor(new PixelPoint(point.x(), point.y()));
        return floor.filter(f -> Math.abs(f.xMetres()) <= rules.lengthMetres() / 2 + MARGIN_METRES
                        && Math.abs(f.yMetres()) <= rules.widthMetres() / 2 + MARGIN_METRES)
                .isPresent();
    }

    private boolean explain(RidgePoint point) {
        int column = (int) (point.x() / reach);
        int row = (int) (point.y() / reach);
        for (int r = Math.max(0, row - 1); r <= Math.min(firstInCell.length / columns - 1, row + 1); r++) {
            for (int c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
                for (int k = firstInCell[r * columns + c]; k >= 0; k = nextInCell.get(k)) {
                    if (onLine(point, line.get(k))) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private boolean onLine(RidgePoint point, RidgePoint place) {
        double dx = point.x() - place.x();
        double dy = point.y() - place.y();
        return Math.abs(point.normalX() * place.normalX() + point.normalY() * place.normalY()) >= SAME_DIRECTION
                && Math.abs(dx * place.normalX() + dy * place.normalY()) <= reach;
    }
}
