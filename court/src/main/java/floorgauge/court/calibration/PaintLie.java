package floorgauge.court.calibration;

import floorgauge.court.rules.PaintedLine;
import java.util.Arrays;

/**
 * Where a painted line lies beside its place in the book: a straight line off at either of its ends, an arc's centre off
 * along and across the court and its radius. Each of these ways is unknown, with a standard deviation of a centimetre on
 * the floor and a tenth of a pixel in the picture; a line that lies several of them off, or is another sport's, loses its
 * say instead of pulling the court along.
 *
 * <p>Source: Golub and Pereyra, The differentiation of pseudo-inverses and nonlinear least squares problems whose variables
 * separate (SIAM Journal on Numerical Analysis 10, 1973), for taking the unknowns out.
 */
final class PaintLie {

    /** In how many ways a painted line can lie off its place. */
    static final int WAYS = 3;

    /** An end of a painted line lies about this far off its place, standard deviation (common practice: laid by tape). */
    private static final double PAINT_ERROR_METRES = 0.01;

    /**
     * Each way is seen this far off, standard deviation: what a codec's blocks, worn edges and neighbouring paint do to a
     * whole line at once (measured on rendered views of seeds below 9000: the middle of a line 0.09 pixels off its true
     * place, root mean square over lines).
     */
    private static final double SEEN_ERROR_PIXELS = 0.13;

    /** Farther off than this many standard deviations a line is thought misplaced, or another one. */
    private static final double BELIEVED = 4;

    /** Steps of the reweighting: the first look at the whole line, the last at its own noise. */
    private static final int STEPS = 8;

    private static final int WIDE_STEPS = 3;

    /** In place of shares: the line has no place of its own. */
    private static final double[][] AS_PAINTED = {};

    private final int first;
    private final int last;
    private final double[] residual;
    private final double[][] shares;
    private final double[] off = new double[WAYS];
    private double[][] mixed = new double[0][];
    private final double[][] own = new double[WAYS][WAYS];
    private double[][] solvedFrom = new double[WAYS][WAYS];

    private PaintLie(int first, int last, double[] residual, double[][] shares) {
        this.first = first;
        this.last = last;
        this.residual = Arrays.copyOfRange(residual, first, last);
        this.shares = shares;
    }

    /** A line taken to lie where the book has it. */
    static PaintLie asPainted(int first, int last, double[] residual) {
        return new PaintLie(first, last, residual, AS_PAINTED);
    }

    /**
     * The line's own place, for a place of the court.
     *
     * @param first of the line's matches
     * @param last past them
     * @param residual of every match, standard deviations
     * @param weight of every match
     * @param shares how many standard deviations a match moves for one of each way
     */
    static PaintLie estimated(int first, int last, double[] residual, double[] weight, double[][] shares) {
        PaintLie lie = new PaintLie(first, last, residual, shares);
        double[] full = lie.residual.clone();
        for (int step = 0; step < STEPS; step++) {
            double spread = step < WIDE_STEPS ? Math.max(1, lie.spread()) : 1;
            if (!lie.improve(full, weight, spread)) {
                break;
            }
        }
        return lie;
    }

    /** 1.4826 times the median absolute residual that is left. */
    private double spread() {
        double[] sizes = Arrays.stream(residual).map(Math::abs).sorted().toArray();
        return 1.4826 * sizes[sizes.length / 2];
    }

    /** A step of iterated reweighting. */
    private boolean improve(double[] full, double[] weight, double spread) {
        double[][] matrix = new double[WAYS][WAYS];
        double[] right = new double[WAYS];
        double prior = priorWeight();
        for (int way = 0; way < WAYS; way++) {
            matrix[way][way] = prior;
        }
        double[][] by = shares();
        for (int i = first; i < last; i++) {
            double inner = LineObservations.tukey(residual[i - first] / spread);
            if (inner > 0) {
                double w = weight[i] * inner * inner;
                for (int a = 0; a < WAYS; a++) {
                    right[a] += w * by[i][a] * full[i - first];
                    for (int b = 0; b <= a; b++) {
                        matrix[a][b] += w * by[i][a] * by[i][b];
                    }
                }
            }
        }
        solvedFrom = matrix;
        double[] solved =
                NormalEquations.solve(NormalEquations.factor(matrix, 0).orElseThrow(), right);
        boolean changed = false;
        for (int way = 0; way < WAYS; way++) {
            changed |= Math.abs(solved[way] - off[way]) > 1e-9;
            off[way] = solved[way];
        }
        for (int i = first; i < last; i++) {
            double moved = 0;
            for (int way = 0; way < WAYS; way++) {
                moved += by[i][way] * off[way];
            }
            residual[i - first] = full[i - first] - moved;
        }
        return changed || spread > 1;
    }

    private double[][] shares() {
        if (shares == AS_PAINTED) {
            throw new IllegalStateException("a line as painted has no place of its own");
        }
        return shares;
    }

    /** A normal distribution's for a line about its place, falling with the square of the distance beyond. */
    private double priorWeight() {
        double beyond = Math.max(1, off() / BELIEVED);
        return 1 / (beyond * beyond);
    }

    /** Half the square near the place, then the logarithm that the falling weight integrates to. */
    private double priorCost() {
        double beyond = Math.max(1, off() / BELIEVED);
        double near = Math.min(BELIEVED, off());
        return near * near / 2 + BELIEVED * BELIEVED * Math.log(beyond);
    }

    /** How far the line lies off, standard deviations of one way. */
    private double off() {
        return Math.sqrt(off[0] * off[0] + off[1] * off[1] + off[2] * off[2]);
    }

    /**
     * How far a sample moves across its line for one standard deviation of each way.
     *
     * @param metre how far it moves, in standard deviations of a residual, where it moves a metre on the floor
     * @param sigmaPixels that standard deviation
     */
    static void shares(CourtSamples samples, int i, double metre, double sigmaPixels, double[] shares) {
        double unit = Math.copySign(Math.hypot(PAINT_ERROR_METRES * metre, SEEN_ERROR_PIXELS / sigmaPixels), metre);
        PaintedLine line = samples.lines.get(samples.line[i]);
        if (line instanceof PaintedLine.Straight s) {
            double along = (samples.x[i] - s.from().xMetres()) * samples.directionX[i]
                    + (samples.y[i] - s.from().yMetres()) * samples.directionY[i];
            double t = along / s.from().distanceTo(s.to());
            shares[0] = (1 - t) * unit;
            shares[1] = t * unit;
            shares[2] = 0;
            return;
        }
        // Across an arc is along its radius; half the variance for the centre, half for the radius.
        double part = Math.sqrt(0.5) * unit;
        shares[0] = -samples.directionY[i] * part;
        shares[1] = samples.directionX[i] * part;
        shares[2] = part;
    }

    int first() {
        return first;
    }

    int last() {
        return last;
    }

    /** Residual of a match about the line's own place, standard deviations. */
    double residual(int match) {
        return residual[match - first];
    }

    /** Notes what a match tells of both the court's place and the line's. */
    void mix(int match, double[] derivative, double weight) {
        if (shares == AS_PAINTED) {
            return;
        }
        if (mixed.length == 0) {
            mixed = new double[derivative.length][WAYS];
        }
        double[] by = shares[match];
        for (int a = 0; a < WAYS; a++) {
            for (int i = 0; i < derivative.length; i++) {
                mixed[i][a] += weight * derivative[i] * by[a];
            }
            for (int b = 0; b <= a; b++) {
                own[a][b] += weight * by[a] * by[b];
            }
        }
    }

    /** Squared standard deviations that the line lies off, all ways together, as far as it is believed. */
    double squaredOff() {
        return priorWeight() * off() * off();
    }

    /**
     * How much of {@link #squaredOff} the points of the line can have told, on average over lines painted as expected: one a
     * way that they show well, nothing for one that they do not show.
     */
    double told() {
        double[][] lower = NormalEquations.factor(solvedFrom, 0).orElseThrow();
        double told = 0;
        for (int way = 0; way < WAYS; way++) {
            double[] unit = new double[WAYS];
            unit[way] = 1;
            told += 1 - priorWeight() * NormalEquations.solve(lower, unit)[way];
        }
        return told;
    }

    /** Takes the line's own place out of the equations. */
    void takeOut(NormalEquations equations) {
        if (mixed.length == 0) {
            return;
        }
        for (int way = 0; way < WAYS; way++) {
            own[way][way] += priorWeight();
        }
        equations.eliminate(mixed, own, priorCost());
    }
}
