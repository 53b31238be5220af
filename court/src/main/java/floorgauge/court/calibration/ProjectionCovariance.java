package floorgauge.court.calibration;

import java.util.Arrays;

/**
 * How uncertain a {@link FloorProjection} is: the covariance of its eleven parameters. The homography's own scale carries no
 * meaning, so at most ten directions are uncertain (eight without lens). Immutable.
 */
public final class ProjectionCovariance {

    private static final int N = FloorProjection.PARAMETERS;

    private final double[] entries;

    private ProjectionCovariance(double[] entries) {
        this.entries = entries;
    }

    /** A projection known exactly, as a renderer knows its own. */
    public static ProjectionCovariance zero() {
        return new ProjectionCovariance(new double[N * N]);
    }

    /**
     * @param rowMajor 11 x 11, symmetric, row by row, finite
     * @throws IllegalArgumentException where it is not
     */
    public static ProjectionCovariance of(double... rowMajor) {
        if (rowMajor.length != N * N) {
            throw new IllegalArgumentException("the covariance has " + N * N + " entries, not " + rowMajor.length);
        }
        for (int row = 0; row < N; row++) {
            if (!(rowMajor[N * row + row] >= 0)) {
                throw new IllegalArgumentException("a variance must be at least 0: " + rowMajor[N * row + row]);
            }
            for (int column = 0; column < N; column++) {
                if (!Double.isFinite(rowMajor[N * row + column])) {
                    throw new IllegalArgumentException("a covariance must be finite");
                }
            }
        }
        return new ProjectionCovariance(rowMajor.clone());
    }

    /** The 121 entries, row by row. */
    public double[] rowMajor() {
        return entries.clone();
    }

    /** The same with every entry multiplied by a factor of at least 0. */
    public ProjectionCovariance scaled(double factor) {
        double[] scaled = entries.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= factor;
        }
        return of(scaled);
    }

    /** {@code C + sum (U g)(U g)'}: with what errors of unit size, each pulling along its own gradient g, add to it. */
    ProjectionCovariance withPulls(ProjectionCovariance unit, double[][] gradients) {
        double[] sum = entries.clone();
        for (double[] gradient : gradients) {
            double[] move = new double[N];
            for (int row = 0; row < N; row++) {
                for (int column = 0; column < N; column++) {
                    move[row] += unit.entries[N * row + column] * gradient[column];
                }
            }
            for (int row = 0; row < N; row++) {
                for (int column = 0; column < N; column++) {
                    sum[N * row + column] += move[row] * move[column];
                }
            }
        }
        return of(sum);
    }

    /** {@code M C M'} for a 11 x 11 matrix: the covariance of linear functions of the parameters. */
    ProjectionCovariance mapped(double[][] matrix) {
        double[] mapped = new double[N * N];
        for (int row = 0; row < N; row++) {
            for (int column = 0; column <= row; column++) {
                double value = between(matrix[row], matrix[column]);
                mapped[N * row + column] = value;
                mapped[N * column + row] = value;
            }
        }
        return of(mapped);
    }

    /** {@code a' C b} for two rows of derivatives by the parameters. */
    double between(double[] a, double[] b) {
        double sum = 0;
        for (int row = 0; row < N; row++) {
            double inner = 0;
            for (int column = 0; column < N; column++) {
                inner += entries[N * row + column] * b[column];
            }
            sum += a[row] * inner;
        }
        return sum;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ProjectionCovariance && Arrays.equals(entries, ((ProjectionCovariance) other).entries);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(entries);
    }

    @Override
    public String toString() {
        return "ProjectionCovariance" + Arrays.toString(entries);
    }
}
