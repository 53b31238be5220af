package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.lines.PaintPlace;
import floorgauge.court.lines.PaintSearch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Painted lines as residuals: at each point of a line in sight, how far across the line the paint lies. Along the line
 * nothing is measured, so a line pulls only sideways. Residuals beyond a few standard deviations lose their pull.
 *
 * <p>A line lies where its painters put it, not where the book says. In a last fit each line therefore has a place of its
 * own ({@link PaintLie}), unknown but near the book's, which is estimated along with the court and taken out of the
 * equations: what its points say in common counts once, however many they are.
 */
final class LineObservations implements ProjectionRefiner.Observations {

    /** Tukey's constant for 95 % efficiency (Huber, Robust Statistics, 1981). */
    private static final double TUKEY = 4.685;

    /** A piece shorter than this in the picture counts for less: its neighbours measure the same ridge points. */
    private static final double INDEPENDENT_PIXELS = 5;

    /**
     * Standard deviation of a lens's strength before anything is measured: a phone's wide lens bends the corner of the
     * picture by some parts in ten (own figure). Lines that cannot carry a lens leave it at 0 with this error.
     */
    static final double LENS_PRIOR = 0.1;

    /**
     * The same of its second strength: a lens of one polynomial term and strength k has, by division, a second strength of
     * -2 k^2 (series of Brown's and Fitzgibbon's models compared).
     */
    private static final double SECOND_LENS_PRIOR = 2 * LENS_PRIOR * LENS_PRIOR;

    /** How many ways of lying off the expected laying and seeing errors count as much as. */
    private static final double EXPECTED_WEIGHT = 10;

    /** One point of a line where paint was found. */
    record Match(int sample, double filmX, double filmY, double normalX, double normalY, double weight) {}

    private final CourtSamples samples;
    private final List<Match> matches;
    private final double[] visibleWeight;
    private final double sigmaPixels;
    private final double[] lensMean = new double[2];
    private final double[] lensError = {LENS_PRIOR, SECOND_LENS_PRIOR};
    private double countAsOne = 1;
    private boolean ownPlaces;

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

    /**
     * What of this is evidence: the paint, and the lines in sight, that answer to one line of the court alone.
     *
     * @param projection with which the paint was found
     * @param reachPixels with which it was found
     */
    LineObservations toldApart(FloorProjection projection, int width, int height, double reachPixels) {
        boolean[] apart = ToldApart.of(samples, visibleWeight, projection, width, height, reachPixels);
        double[] visible = visibleWeight.clone();
        for (int i = 0; i < visible.length; i++) {
            visible[i] = apart[i] ? visible[i] : 0;
        }
        return new LineObservations(
                samples, matches.stream().filter(m -> apart[m.sample()]).toList(), visible, sigmaPixels);
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

    /** The lens's strengths are known to be about these, each with this standard deviation. */
    LineObservations withLens(Lens mean, double error) {
        lensMean[0] = mean.k();
        lensMean[1] = mean.l();
        java.util.Arrays.fill(lensError, error);
        return this;
    }

    /**
     * Gives each line a place of its own.
     *
     * @param asOne how many points of a line count as one, at least 1
     */
    LineObservations withOwnPlaces(double asOne) {
        countAsOne = asOne;
        ownPlaces = true;
        return this;
    }

    List<Match> matches() {
        return matches;
    }

    /** Where the paint lies. */
    List<PaintPlace> places() {
        return matches.stream()
                .map(m -> new PaintPlace(m.filmX(), m.filmY(), m.normalX(), m.normalY(), m.weight()))
                .toList();
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

    /** Residuals in pixels of all matches about the lines' own places; infinite where a match is out of sight. */
    double[] aboutLines(FloorProjection projection) {
        double[] left = new double[matches.size()];
        for (PaintLie lie : lies(projection)) {
            for (int i = lie.first(); i < lie.last(); i++) {
                left[i] = lie.residual(i) * sigmaPixels;
            }
        }
        return left;
    }

    /**
     * How much farther than expected the lines lie off their places, as a factor of the variance, at least 1: what they lie
     * off, over what they would where they were painted and seen as expected, less what the court took up; and that
     * expectation itself with the weight of a few lines, so that few lines alone say little.
     */
    double paintVariance(FloorProjection projection) {
        double off = EXPECTED_WEIGHT;
        double told = EXPECTED_WEIGHT;
        for (PaintLie lie : lies(projection)) {
            off += lie.squaredOff();
            told += lie.told();
        }
        return Math.max(1, off / Math.max(EXPECTED_WEIGHT, told - ParameterBasis.FIRST_LENS));
    }

    @Override
    public void residuals(FloorProjection projection, ParameterBasis basis, NormalEquations into) {
        addLens(projection.lens(), basis, into);
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        double[] row = new double[FloorProjection.PARAMETERS];
        double[] derivative = new double[basis.size()];
        for (PaintLie lie : lies(projection)) {
            for (int i = lie.first(); i < lie.last(); i++) {
                Match m = matches.get(i);
                double weight = m.weight() / countAsOne;
                double inner = tukey(lie.residual(i));
                if (!(inner > 0)
                        || !projection.derivatives(samples.x[m.sample()], samples.y[m.sample()], byFloor, by)) {
                    into.add(0, derivative, 0, weight * tukeyCost(Double.POSITIVE_INFINITY));
                    continue;
                }
                for (int k = 0; k < row.length; k++) {
                    row[k] = (by[0][k] * m.normalX() + by[1][k] * m.normalY()) / sigmaPixels;
                }
                basis.along(row, derivative);
                into.add(lie.residual(i), derivative, weight * inner * inner, weight * tukeyCost(lie.residual(i)));
                lie.mix(i, derivative, weight * inner * inner);
            }
            lie.takeOut(into);
        }
    }

    /** One less the squared share of a residual, in standard deviations, of the largest that counts; at most 0 beyond. */
    static double tukey(double residual) {
        double u = residual / TUKEY;
        return 1 - u * u;
    }

    /** Half the square of a small residual, at most a sixth of the largest's. */
    static double tukeyCost(double residual) {
        double inner = Math.max(0, tukey(residual));
        return TUKEY * TUKEY / 6 * (1 - inner * inner * inner);
    }

    /**
     * How each painted line pulls the parameters where it lies off its place, in a fit that takes lines to lie where the
     * book has them: for each way of {@link PaintLie} the gradient of the fit by the parameters, residuals in units of
     * sigma.
     */
    double[][] pullOfLines(FloorProjection projection) {
        double[][] pull = new double[PaintLie.WAYS * samples.lines.size()][FloorProjection.PARAMETERS];
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        double[] shares = new double[PaintLie.WAYS];
        for (Match m : matches) {
            int i = m.sample();
            double inner = tukey(residual(m, projection) / sigmaPixels);
            if (!(inner > 0) || !projection.derivatives(samples.x[i], samples.y[i], byFloor, by)) {
                continue;
            }
            double metre = signedMetreAcross(samples, i, m.normalX(), m.normalY(), byFloor) / sigmaPixels;
            PaintLie.shares(samples, i, metre, sigmaPixels, shares);
            for (int k = 0; k < FloorProjection.PARAMETERS; k++) {
                double row = (by[0][k] * m.normalX() + by[1][k] * m.normalY()) / sigmaPixels;
                for (int way = 0; way < PaintLie.WAYS; way++) {
                    pull[PaintLie.WAYS * samples.line[i] + way][k] += m.weight() * inner * inner * row * shares[way];
                }
            }
        }
        return pull;
    }

    private void addLens(Lens lens, ParameterBasis basis, NormalEquations into) {
        double[] strengths = {lens.k(), lens.l()};
        for (int term = 0; term < basis.size() - ParameterBasis.FIRST_LENS; term++) {
            double[] derivative = new double[basis.size()];
            double strength = (strengths[term] - lensMean[term]) / lensError[term];
            derivative[ParameterBasis.FIRST_LENS + term] = 1 / lensError[term];
            into.add(-strength, derivative, 1, strength * strength / 2);
        }
    }

    /** Where each line with matches lies, given the court's place. */
    private List<PaintLie> lies(FloorProjection projection) {
        double[] residual = new double[matches.size()];
        double[] weight = new double[matches.size()];
        double[][] shares = new double[matches.size()][];
        double[][] byFloor = new double[2][2];
        double[][] by = new double[2][FloorProjection.PARAMETERS];
        for (int i = 0; i < residual.length; i++) {
            Match m = matches.get(i);
            residual[i] = residual(m, projection) / sigmaPixels;
            weight[i] = m.weight() / countAsOne;
            shares[i] = new double[PaintLie.WAYS];
            if (ownPlaces && projection.derivatives(samples.x[m.sample()], samples.y[m.sample()], byFloor, by)) {
                double metre = signedMetreAcross(samples, m.sample(), m.normalX(), m.normalY(), byFloor) / sigmaPixels;
                PaintLie.shares(samples, m.sample(), metre, sigmaPixels, shares[i]);
            }
        }
        List<PaintLie> lies = new ArrayList<>();
        int first = 0;
        for (int i = 1; i <= residual.length; i++) {
            if (i == residual.length || lineOf(i) != lineOf(first)) {
                lies.add(
                        ownPlaces
                                ? PaintLie.estimated(first, i, residual, weight, shares)
                                : PaintLie.asPainted(first, i, residual));
                first = i;
            }
        }
        return lies;
    }

    private int lineOf(int match) {
        return samples.line[matches.get(match).sample()];
    }
}
