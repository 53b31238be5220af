package floorgauge.court.calibration;

import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * The homography of four or more point pairs by the direct linear transform, after each set was moved to its centroid and
 * scaled to a mean distance of the square root of 2.
 *
 * <p>Source: Hartley and Zisserman, Multiple View Geometry (2nd edition, 2004), algorithm 4.2.
 */
final class NormalisedDlt {

    /** Below this ratio of the eighth to the first singular value the pairs leave more than one homography open. */
    private static final double RANK_TOLERANCE = 1e-7;

    private NormalisedDlt() {}

    /**
     * @param from n points, each x, y
     * @param to n points, each x, y, in the same order
     * @return the homography from the first to the second; empty where fewer than four pairs, or too many in a line
     */
    static Optional<Homography> fit(double[][] from, double[][] to) {
        int n = from.length;
        if (n < 4) {
            return Optional.empty();
        }
        try {
            Homography normaliseFrom = normalising(from);
            Homography normaliseTo = normalising(to);
            // At least nine rows, so that the decomposition holds the null vector.
            double[][] rows = new double[Math.max(2 * n, 9)][9];
            for (int i = 0; i < n; i++) {
                fillRows(rows, 2 * i, mapped(normaliseFrom, from[i]), mapped(normaliseTo, to[i]));
            }
            SingularValueDecomposition svd = new SingularValueDecomposition(new Array2DRowRealMatrix(rows, false));
            double[] values = svd.getSingularValues();
            if (values[7] < RANK_TOLERANCE * values[0]) {
                return Optional.empty();
            }
            Homography normalised = Homography.of(svd.getV().getColumn(8));
            return Optional.of(normaliseTo.inverse().after(normalised).after(normaliseFrom));
        } catch (IllegalArgumentException | MathRuntimeException degenerate) {
            return Optional.empty();
        }
    }

    private static void fillRows(double[][] rows, int row, double[] p, double[] q) {
        rows[row] = new double[] {0, 0, 0, -p[0], -p[1], -1, q[1] * p[0], q[1] * p[1], q[1]};
        rows[row + 1] = new double[] {p[0], p[1], 1, 0, 0, 0, -q[0] * p[0], -q[0] * p[1], -q[0]};
    }

    private static double[] mapped(Homography h, double[] p) {
        return new double[] {h.mapX(p[0], p[1]), h.mapY(p[0], p[1])};
    }

    /** Moves the centroid to the origin and scales the mean distance to the square root of 2. */
    static Homography normalising(double[][] points) {
        double x = 0;
        double y = 0;
        for (double[] p : points) {
            x += p[0] / points.length;
            y += p[1] / points.length;
        }
        double distance = 0;
        for (double[] p : points) {
            distance += Math.hypot(p[0] - x, p[1] - y) / points.length;
        }
        return Homography.similarity(Math.sqrt(2) / distance, x, y);
    }
}
