package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import java.util.Arrays;
import java.util.Optional;

/**
 * Which points of a court's lines are evidence of their own. Paint that fits two lines of a court speaks for one of them:
 * where two run side by side within the reach of the search, the picture can't tell them apart, and only the first counts.
 * A court seen flat, such as one laid over a few rows of bricks, has dozens of lines there and yet no evidence.
 */
final class ToldApart {

    /** Lines within this angle of each other answer to the same paint: the search for paint takes as much. */
    private static final double SAME_DIRECTION = Math.cos(Math.toRadians(14));

    private final CourtSamples samples;
    private final double reach;
    private final double cell;
    private final int columns;
    private final int[] firstInCell;
    private final int[] nextInCell;
    private final double[] x;
    private final double[] y;
    private final double[] directionX;
    private final double[] directionY;

    private ToldApart(CourtSamples samples, int width, int height, double reach) {
        this.samples = samples;
        this.reach = reach;
        this.cell = 2 * reach;
        this.columns = (int) (width / cell) + 1;
        this.firstInCell = new int[columns * ((int) (height / cell) + 1)];
        this.nextInCell = new int[samples.size()];
        this.x = new double[samples.size()];
        this.y = new double[samples.size()];
        this.directionX = new double[samples.size()];
        this.directionY = new double[samples.size()];
        Arrays.fill(firstInCell, -1);
    }

    /**
     * @param visibleWeight of each sample, 0 where it is out of sight
     * @param reachPixels how far paint is looked for to either side of a line, above 0
     * @return for each sample whether it is in sight and no line before its own answers to the same paint
     */
    static boolean[] of(
            CourtSamples samples,
            double[] visibleWeight,
            FloorProjection projection,
            int width,
            int height,
            double reachPixels) {
        ToldApart lines = new ToldApart(samples, width, height, reachPixels);
        boolean[] apart = new boolean[samples.size()];
        for (int i = 0; i < apart.length; i++) {
            apart[i] = visibleWeight[i] > 0 && lines.place(i, projection) && lines.claim(i, width, height);
        }
        return apart;
    }

    private boolean place(int i, FloorProjection projection) {
        double half = samples.spacing[i] / 2;
        Optional<PixelPoint> at = projection.toFilm(samples.x[i], samples.y[i]);
        Optional<PixelPoint> ahead = projection.toFilm(
                samples.x[i] + half * samples.directionX[i], samples.y[i] + half * samples.directionY[i]);
        if (at.isEmpty() || ahead.isEmpty()) {
            return false;
        }
        x[i] = at.get().x();
        y[i] = at.get().y();
        double length = at.get().distanceTo(ahead.get());
        directionX[i] = (ahead.get().x() - x[i]) / length;
        directionY[i] = (ahead.get().y() - y[i]) / length;
        return length > 0;
    }

    /** Whether no other line has this paint; from now on the sample's own has it. */
    private boolean claim(int i, int width, int height) {
        int column = (int) (x[i] / cell);
        int row = (int) (y[i] / cell);
        for (int r = Math.max(0, row - 1); r <= Math.min((int) (height / cell), row + 1); r++) {
            for (int c = Math.max(0, column - 1); c <= Math.min((int) (width / cell), column + 1); c++) {
                for (int k = firstInCell[r * columns + c]; k >= 0; k = nextInCell[k]) {
                    if (samples.line[k] != samples.line[i] && samePaint(i, k)) {
                        return false;
                    }
                }
            }
        }
        int own = row * columns + column;
        nextInCell[i] = firstInCell[own];
        firstInCell[own] = i;
        return true;
    }

    private boolean samePaint(int i, int k) {
        double dx = x[k] - x[i];
        double dy = y[k] - y[i];
        return Math.abs(directionX[i] * directionX[k] + directionY[i] * directionY[k]) >= SAME_DIRECTION
                && Math.abs(dy * directionX[i] - dx * directionY[i]) <= reach
                && Math.abs(dx * directionX[i] + dy * directionY[i]) <= cell;
    }
}
