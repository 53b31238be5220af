package floorgauge.vision.tracking;

import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/** Two independent estimates of one state: how well they agree, and what they say together. */
final class StateComparison {

    /** Added to the diagonal, so that exact states are no special case. */
    private static final double LEAST_VARIANCE = 1e-10;

    private static final double FREEDOM = 4;

    private StateComparison() {}

    /**
     * Natural logarithm of a density per m2 (m/s)2 of the difference, whose scale is A + B: Student's t with four degrees of
     * freedom, since the errors of one person's sightings in a row are alike and the states are surer of themselves than they
     * should be. {@code Gamma(4) / (Gamma(2) (4 pi)^2) = 6 / (4 pi)^2}.
     */
    static double logDensity(FloorState a, FloorState b) {
        RealMatrix sum = matrix(a).add(matrix(b));
        CholeskyDecomposition cholesky = decompose(sum);
        RealVector difference = vector(a).subtract(vector(b));
        double squared = difference.dotProduct(cholesky.getSolver().solve(difference));
        return Math.log(6)
                - 2 * Math.log(FREEDOM * Math.PI)
                - (FREEDOM + FloorState.SIZE) / 2 * Math.log1p(squared / FREEDOM)
                - 0.5 * Math.log(cholesky.getDeterminant());
    }

    /** The estimate from both: a + A (A + B)^-1 (b - a), covariance A - A (A + B)^-1 A. */
    static FloorState fuse(FloorState a, FloorState b) {
        RealMatrix ca = matrix(a);
        DecompositionSolver solver = decompose(ca.add(matrix(b))).getSolver();
        RealVector mean = vector(a).add(ca.operate(solver.solve(vector(b).subtract(vector(a)))));
        RealMatrix covariance = ca.subtract(ca.multiply(solver.solve(ca)));
        RealMatrix symmetric = covariance.add(covariance.transpose()).scalarMultiply(0.5);
        return new FloorState(mean.toArray(), symmetric.getData());
    }

    private static CholeskyDecomposition decompose(RealMatrix m) {
        RealMatrix padded = m.copy();
        for (int i = 0; i < FloorState.SIZE; i++) {
            padded.addToEntry(i, i, LEAST_VARIANCE);
        }
        return new CholeskyDecomposition(padded, 1e-6, 1e-15);
    }

    private static RealMatrix matrix(FloorState state) {
        return MatrixUtils.createRealMatrix(state.covariance());
    }

    private static RealVector vector(FloorState state) {
        return MatrixUtils.createRealVector(state.mean());
    }
}
