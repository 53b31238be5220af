package floorgauge.court.calibration;

import java.util.Optional;

/**
 * Damped least squares over a projection's parameters.
 *
 * <p>Source: Hartley and Zisserman, Multiple View Geometry (2nd edition, 2004), appendix 6 (Levenberg and Marquardt);
 * robust residuals by iterated reweighting, as the observations weigh themselves.
 */
final class ProjectionRefiner {

    private static final int LARGEST_ITERATIONS = 60;
    private static final double FIRST_DAMPING = 1e-4;
    private static final double LARGEST_DAMPING = 1e8;
    private static final double CONVERGED = 1e-10;

    /** What a projection is fitted to. */
    interface Observations {
        /**
         * Adds every residual of the projection.
         *
         * @param basis directions of the derivatives
         */
        void residuals(FloorProjection projection, ParameterBasis basis, NormalEquations into);
    }

    /**
     * @param projection the fitted one
     * @param unitCovariance of its parameters, for residuals whose standard deviations are right
     * @param cost sum over the residuals at the end
     * @param weight how many residuals counted
     */
    record Fit(FloorProjection projection, ProjectionCovariance unitCovariance, double cost, double weight) {}

    private ProjectionRefiner() {}

    /**
     * @param start near the answer
     * @param lensTerms how many of the lens's strengths are fitted too, 0 to 2
     * @return the fit; empty where the observations leave a direction open
     */
    static Optional<Fit> refine(FloorProjection start, Observations observations, int lensTerms) {
        return refine(start, observations, lensTerms, LARGEST_ITERATIONS);
    }

    /** As above, but at most this many steps: enough where the observations are found anew after each fit. */
    static Optional<Fit> refine(
            FloorProjection start, Observations observations, int lensTerms, int largestIterations) {
        FloorProjection current = start;
        double damping = FIRST_DAMPING;
        ParameterBasis basis = ParameterBasis.at(current, lensTerms);
        NormalEquations equations = new NormalEquations(basis.size());
        NormalEquations trial = new NormalEquations(basis.size());
        observations.residuals(current, basis, equations);
        for (int i = 0; i < largestIterations && damping < LARGEST_DAMPING; i++) {
            Optional<double[]> step = equations.step(damping);
            if (step.isEmpty()) {
                return Optional.empty();
            }
            FloorProjection moved = tryMove(basis, current, step.get());
            ParameterBasis movedBasis = moved == null ? basis : ParameterBasis.at(moved, lensTerms);
            trial.clear();
            if (moved != null) {
                observations.residuals(moved, movedBasis, trial);
            }
            if (moved == null || !(trial.cost() <= equations.cost())) {
                damping *= 10;
                continue;
            }
            boolean converged = equations.cost() - trial.cost() <= CONVERGED * (1 + equations.cost());
            current = moved;
            basis = movedBasis;
            NormalEquations swap = equations;
            equations = trial;
            trial = swap;
            damping = Math.max(1e-12, damping / 10);
            if (converged) {
                break;
            }
        }
        ParameterBasis last = basis;
        FloorProjection fitted = current;
        NormalEquations end = equations;
        return end.inverse().map(inverse -> new Fit(fitted, last.covariance(inverse), end.cost(), end.weight()));
    }

    private static FloorProjection tryMove(ParameterBasis basis, FloorProjection from, double[] step) {
        try {
            return basis.moved(from, step);
        } catch (IllegalArgumentException notAProjection) {
            return null;
        }
    }
}
