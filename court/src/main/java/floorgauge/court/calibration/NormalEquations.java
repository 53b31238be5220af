package floorgauge.court.calibration;

import java.util.Arrays;
import java.util.Optional;

/**
 * The normal equations of a least squares step: residuals and their derivatives go in one at a time, so that any number of
 * them needs the same memory.
 */
final class NormalEquations {

    private final double[][] matrix;
    private final double[] gradient;
    private double cost;
    private double weight;

    NormalEquations(int unknowns) {
        this.matrix = new double[unknowns][unknowns];
        this.gradient = new double[unknowns];
    }

    void clear() {
        for (double[] row : matrix) {
            Arrays.fill(row, 0);
        }
        Arrays.fill(gradient, 0);
        cost = 0;
        weight = 0;
    }

    /**
     * @param residual measured less predicted, in its own standard deviations
     * @param derivative of the prediction by the unknowns, in the same unit
     * @param residualWeight 0 to 1
     * @param residualCost what this residual adds to the cost
     */
    void add(double residual, double[] derivative, double residualWeight, double residualCost) {
        for (int i = 0; i < gradient.length; i++) {
            double weighted = residualWeight * derivative[i];
            gradient[i] += weighted * residual;
            for (int j = 0; j <= i; j++) {
                matrix[i][j] += weighted * derivative[j];
            }
        }
        cost += residualCost;
        weight += residualWeight;
    }

    /**
     * Lets unknowns that only some of the residuals know, and that are at their best already, move along with every step
     * and takes them out again: the matrix loses {@code B C^-1 B'} (Schur's complement).
     *
     * @param mixed B, a row an unknown of these equations, a column an unknown to take out
     * @param own C, positive definite
     * @param ownCost what their own terms add to the cost
     */
    void eliminate(double[][] mixed, double[][] own, double ownCost) {
        cost += ownCost;
        double[][] lower = factor(own, 0).orElseThrow();
        double[][] solved = new double[gradient.length][];
        for (int i = 0; i < gradient.length; i++) {
            solved[i] = solve(lower, mixed[i]);
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int k = 0; k < own.length; k++) {
                    sum += mixed[j][k] * solved[i][k];
                }
                matrix[i][j] -= sum;
            }
        }
    }

    double cost() {
        return cost;
    }

    /** Sum of the weights: how many residuals count. */
    double weight() {
        return weight;
    }

    /** The step, with the diagonal raised by the share {@code damping}; empty where the matrix is not definite. */
    Optional<double[]> step(double damping) {
        return factor(matrix, damping).map(lower -> solve(lower, gradient));
    }

    /** Inverse of the matrix: the covariance of the unknowns where residuals have unit variance. */
    Optional<double[][]> inverse() {
        return factor(matrix, 0).map(lower -> {
            double[][] inverse = new double[gradient.length][];
            for (int i = 0; i < gradient.length; i++) {
                double[] unit = new double[gradient.length];
                unit[i] = 1;
                inverse[i] = solve(lower, unit);
            }
            return inverse;
        });
    }

    /** Cholesky's lower factor, of the lower half alone; empty where the matrix is not definite. */
    static Optional<double[][]> factor(double[][] matrix, double damping) {
        int n = matrix.length;
        double[][] lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = i == j ? matrix[i][i] * (1 + damping) : matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i == j) {
                    if (!(sum > 1e-13 * matrix[i][i])) {
                        return Optional.empty();
                    }
                    lower[i][i] = Math.sqrt(sum);
                } else {
                    lower[i][j] = sum / lower[j][j];
                }
            }
        }
        return Optional.of(lower);
    }

    static double[] solve(double[][] lower, double[] right) {
        int n = right.length;
        double[] x = right.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= lower[i][k] * x[k];
            }
            x[i] /= lower[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                x[i] -= lower[k][i] * x[k];
            }
            x[i] /= lower[i][i];
        }
        return x;
    }
}
