package floorgauge.eval.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Precision and recall as the probability from which a candidate is shown falls from 1 to 0. Candidates of equal probability
 * come in together.
 *
 * @param points in descending order of threshold
 * @param positives how many there were to find
 */
public record PrecisionRecallCurve(List<Point> points, long positives) {

    /**
     * A candidate that was judged.
     *
     * @param probability given to it, 0 to 1
     * @param real whether it is real
     */
    public record Candidate(double probability, boolean real) {

        public Candidate {
            if (!(probability >= 0 && probability <= 1)) {
                throw new IllegalArgumentException("a probability lies in 0 to 1: " + probability);
            }
        }
    }

    /**
     * One point of the curve.
     *
     * @param threshold candidates of at least this probability are shown
     * @param shown how many
     * @param real how many of them are real
     * @param precision real over shown
     * @param recall real over all there were to find; NaN where there were none
     */
    public record Point(double threshold, long shown, long real, double precision, double recall) {}

    public PrecisionRecallCurve {
        points = List.copyOf(points);
    }

    /** @param missed real ones that no candidate stands for */
    public static PrecisionRecallCurve of(List<Candidate> candidates, long missed) {
        List<Candidate> sorted = candidates.stream()
                .sorted(Comparator.comparingDouble(Candidate::probability).reversed())
                .toList();
        long positives = missed + candidates.stream().filter(Candidate::real).count();
        List<Point> points = new ArrayList<>();
        long real = 0;
        for (int i = 0; i < sorted.size(); i++) {
            real += sorted.get(i).real() ? 1 : 0;
            double threshold = sorted.get(i).probability();
            boolean last = i + 1 == sorted.size() || sorted.get(i + 1).probability() != threshold;
            if (last) {
                points.add(new Point(threshold, i + 1L, real, Ratios.of(real, i + 1L), Ratios.of(real, positives)));
            }
        }
        return new PrecisionRecallCurve(points, positives);
    }

    /**
     * Average precision, the sum of {@code (recall now - recall before) * precision} without interpolation, 0 to 1; NaN
     * where there was nothing to find.
     */
    public double averagePrecision() {
        if (positives == 0) {
            return Double.NaN;
        }
        double sum = 0;
        double recallBefore = 0;
        for (Point point : points) {
            sum += (point.recall() - recallBefore) * point.precision();
            recallBefore = point.recall();
        }
        return sum;
    }
}
