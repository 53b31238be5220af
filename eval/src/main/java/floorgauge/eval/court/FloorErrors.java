package floorgauge.eval.court;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.eval.statistics.Quantiles;
import floorgauge.eval.statistics.Ratios;
import java.util.List;

/**
 * Errors of measured floor positions: feet, ankles, points of the court.
 *
 * @param count how many positions
 * @param medianMetres of the distance to the truth; NaN without any
 * @param ninetiethMetres 90th percentile of that distance; NaN without any
 * @param biasXMetres mean of measured less true along the court; NaN without any
 * @param biasYMetres mean of measured less true across the court; NaN without any
 * @param withinStatedShare share of positions inside the 90 % ellipse of their own covariance: 0.9 where the stated errors
 *     are honest, less where they are too small; NaN without any
 */
public record FloorErrors(
        int count,
        double medianMetres,
        double ninetiethMetres,
        double biasXMetres,
        double biasYMetres,
        double withinStatedShare) {

    /** 90th percentile of chi squared with two degrees of freedom, {@code -2 ln(0.1)}. */
    private static final double NINETY_PERCENT = -2 * Math.log(0.1);

    /**
     * @param truth where it is
     * @param measured where it was measured
     */
    public record Sample(FloorPoint truth, FloorEstimate measured) {

        double xMetres() {
            return measured.mean().xMetres() - truth.xMetres();
        }

        double yMetres() {
            return measured.mean().yMetres() - truth.yMetres();
        }

        /** Distance between truth and measurement. */
        public double distanceMetres() {
            return measured.mean().distanceTo(truth);
        }

        /** Squared Mahalanobis distance, {@code e' C^-1 e}; infinite for an error that a singular covariance rules out. */
        public double squaredNormalisedDistance() {
            double x = xMetres();
            double y = yMetres();
            FloorCovariance c = measured.covariance();
            double determinant = c.xx() * c.yy() - c.xy() * c.xy();
            if (determinant > 0) {
                return (c.yy() * x * x - 2 * c.xy() * x * y + c.xx() * y * y) / determinant;
            }
            return x == 0 && y == 0 ? 0 : Double.POSITIVE_INFINITY;
        }
    }

    /** Sums up samples in any order. */
    public static FloorErrors of(List<Sample> samples) {
        double[] distances =
                samples.stream().mapToDouble(Sample::distanceMetres).sorted().toArray();
        long within = samples.stream()
                .filter(s -> s.squaredNormalisedDistance() <= NINETY_PERCENT)
                .count();
        return new FloorErrors(
                samples.size(),
                Quantiles.ofSorted(distances, 0.5),
                Quantiles.ofSorted(distances, 0.9),
                Ratios.of(samples.stream().mapToDouble(Sample::xMetres).sum(), samples.size()),
                Ratios.of(samples.stream().mapToDouble(Sample::yMetres).sum(), samples.size()),
                Ratios.of(within, samples.size()));
    }
}
