package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.lines.PaintSearch;
import floorgauge.court.rules.PaintedLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Painted lines as residuals: at each point of a line in sight, how far across the line the paint lies. Along the line
 * nothing is measured, so a line pulls only sideways. Residuals beyond a few standard deviations lose their pull.
 */
final class LineObservations implements ProjectionRefiner.Observations {

    /** Tukey's constant for 95 % efficiency (Huber, Robust Statistics, 1981). */
    private static final double TUKEY = 4.685;

    /** The direction of {@link ParameterBasis} in which only the lens moves. */
    private static final int LENS_DIRECTION = 8;

    /** A piece shorter than this in the picture counts for less: its neighbours measure the same ridge points. */
    private static final double INDEPENDENT_PIXELS = 5;

    /**
     * Standard deviation of a lens's strength before anything is measured: a phone's wide lens bends the corner of the
     * picture by some parts in ten (own figure). Lines that cannot carry a lens leave it at 0 with this error.
     */
    private static final double LENS_PRIOR = 0.1;

    /** In how many ways a painted line can lie off its place. */
    private static final int WAYS = 3;

    /** One point of a line where paint was found. */
    record Match(int sample, double filmX, double filmY, double normalX, double normalY, double weight) {}

    private final CourtSamples samples;
    private final List<Match> matches;
    private final double[] visibleWeight;
    private final double sigmaPixels;
    private double lensMean;
    private double lensError = LENS_PRIOR;

    private LineObservations(CourtSamples samples, List<Match> matches, double[] visibleWeight, double sigmaPixels) {
        this.samples = samples;
        this.matches = matches;
        this.visibleWeight = visibleWeight;
        this.sigmaPixels = sigmaPixels;
    }

    /**
     * Looks across every line of the court for paint.
     *
     * @param reachPixels how far to look
     * @param sigmaPixels expected standard deviation of a residual
     */
    static LineObservations find(
            CourtSamples samples,
            PaintSearch paint,
            FloorProjection projection,
            int width,
            int height,
            double reachPixels,
            double sigmaPixels) {
        List<Match> matches = new ArrayList<>();
        double[] visible = new double[samples.size()];
        double[][] byFloor = new double[2][2];
        double[][] byParameters = new double[2][FloorProjection.PARAMETERS];
        for (int i = 0; i < samples.size(); i++) {
            Optional<PixelPoint> at = projection.toFilm(samples.x[i], samples.y[i]);
            if (at.isEmpty()
                    || !inside(at.get(), width, height)
                    || !projection.derivatives(samples.x[i], samples.y[i], byFloor, byParameters)) {
                continue;
            }
            double dx = byFloor[0][0] * samples.directionX[i] + byFloor[0][1] * samples.directionY[i];
            double dy = byFloor[1][0] * samples.directionX[i] + byFloor[1][1] * samples.directionY[i];
            double length = Math.hypot(dx, dy);
            double weight = Math.min(1, length * samples.spacing[i] / INDEPENDENT_PIXELS);
            visible[i] = weight;
            double nx = -dy / length;
            double ny = dx / length;
            double stripe = samples.lines.get(samples.line[i]).widthMetres()
                    * Math.abs(signedMetreAcross(samples, i, nx, ny, byFloor));
            OptionalDouble off = paint.across(at.get().x(), at.get().y(), nx, ny, stripe, reachPixels);
            if (off.isPresent()) {
                double d = off.getAsDouble();
                matches.add(new Match(i, at.get().x() + d * nx, at.get().y() + d * ny, nx, ny, weight));
            }
        }
        return new LineObservations(samples, matches, visible, sigmaPixels);
    }

    /** How many pixels along the normal the picture of a sample moves, where the sample moves a metre across its line. */
    private static double signedMetreAcross(
            CourtSamples samples, int i, double normalX, double normalY, double[][] byFloor) {
        double acrossX = byFloor[0][1] * samples.directionX[i] - byFloor[0][0] * samples.directionY[i];
        double acrossY = byFloor[1][1] * samples.directionX[i] - byFloor[1][0] * samples.directionY[i];
        return acrossX * normalX + acrossY * normalY;
    }

    private static boolean inside(PixelPoint p, int width, int height) {
        return p.x() >= 0 && p.y() >= 0 && p.x() <= width - 1 && p.y() <= height - 1;
    }

    /** The lens's strength is known to be about this, with this standard deviation. */
    LineObservations withLens(double mean, double error) {
        lensMean = mean;
        lensError = error;
        return this;
    }

    List<Match> matches() {
        return matches;
    }

    /** Weight of each sample that is in sight; 0 where it is not. */
    double[] visibleWeight() {
        return visibleWeight;
    }

    /** Residual in pixels of a match, for a projection. */
    double residual(Match m, FloorProjection projection) {
        return projection
                .toFilm(samples.x[m.sample()], samples.y[m.sample()])
                .map(p -> (m.filmX() - p.x()) * m.normalX() + (m.filmY() - p.y()) * m.normalY())
                .orElse(Double.POSITIVE_INFINITY);
    }

    @Override
    public void residuals(FloorProjection projection, ParameterBasis basis, NormalEquations into) {
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        double[] row = new double[FloorProjection.PARAMETERS];
        double[] derivative = new double[basis.size()];
        double most = TUKEY * TUKEY / 6;
        if (basis.size() > LENS_DIRECTION) {
            double strength = (projection.lens().k() - lensMean) / lensError;
            derivative[LENS_DIRECTION] = 1 / lensError;
            into.add(-strength, derivative, 1, strength * strength / 2);
        }
        for (Match m : matches) {
            double x = samples.x[m.sample()];
            double y = samples.y[m.sample()];
            double residual = residual(m, projection) / sigmaPixels;
            double u = residual / TUKEY;
            if (!(Math.abs(u) < 1) || !projection.derivatives(x, y, byFloor, by)) {
                into.add(0, derivative, 0, m.weight() * most);
                continue;
            }
            for (int i = 0; i < row.length; i++) {
                row[i] = (by[0][i] * m.normalX() + by[1][i] * m.normalY()) / sigmaPixels;
            }
            basis.along(row, derivative);
            double inner = 1 - u * u;
            into.add(residual, derivative, m.weight() * inner * inner, m.weight() * most * (1 - inner * inner * inner));
        }
    }

    /**
     * How each painted line pulls the parameters where it lies off its place: for each line of the court three ways in which
     * its painters can have erred, the gradient of the fit by the ten parameters for one metre, residuals in units of sigma.
     * A straight line may lie off at either of its ends (the third way is empty); an arc's centre may lie off along and
     * across the court, and its radius.
     */
    double[][] pullOfLines(FloorProjection projection) {
        double[][] pull = new double[WAYS * samples.lines.size()][FloorProjection.PARAMETERS];
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        double[] shares = new double[WAYS];
        for (Match m : matches) {
            int i = m.sample();
            double u = residual(m, projection) / sigmaPixels / TUKEY;
            if (!(Math.abs(u) < 1) || !projection.derivatives(samples.x[i], samples.y[i], byFloor, by)) {
                continue;
            }
            double weight = m.weight() * (1 - u * u) * (1 - u * u);
            double pixelsPerMetre = signedMetreAcross(samples, i, m.normalX(), m.normalY(), byFloor);
            sharesOfWays(i, shares);
            for (int k = 0; k < FloorProjection.PARAMETERS; k++) {
                double row = by[0][k] * m.normalX() + by[1][k] * m.normalY();
                double one = weight * row * pixelsPerMetre / (sigmaPixels * sigmaPixels);
                for (int way = 0; way < WAYS; way++) {
                    pull[WAYS * samples.line[i] + way][k] += shares[way] * one;
                }
            }
        }
        return pull;
    }

    /** How far a sample moves across its line for one metre of each way. */
    private void sharesOfWays(int i, double[] shares) {
        PaintedLine line = samples.lines.get(samples.line[i]);
        if (line instanceof PaintedLine.Straight s) {
            double along = (samples.x[i] - s.from().xMetres()) * samples.directionX[i]
                    + (samples.y[i] - s.from().yMetres()) * samples.directionY[i];
            double t = along / s.from().distanceTo(s.to());
            shares[0] = 1 - t;
            shares[1] = t;
            shares[2] = 0;
            return;
        }
        // Across an arc is along its radius; half the variance for the centre, half for the radius.
        double part = Math.sqrt(0.5);
        shares[0] = -samples.directionY[i] * part;
        shares[1] = samples.directionX[i] * part;
        shares[2] = part;
    }
}
