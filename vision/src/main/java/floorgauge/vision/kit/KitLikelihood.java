package floorgauge.vision.kit;

import java.util.List;

/**
 * What the distance of two kits says on whether they are one person's: the logarithm of the likelihood ratio, a straight
 * line in the distance, learned from the film itself. Pairs from one unbroken track are the same person, pairs seen in one
 * frame are not; a logistic regression on both, equally weighted, gives the line. Where team-mates dress alike the two
 * overlap and the line turns flat by itself.
 *
 * @param intercept value at distance 0, at least 0
 * @param slope per unit of Hellinger distance, at most 0
 */
public record KitLikelihood(double intercept, double slope) {

    /** Colour alone is never surer than this, in nats: light changes, and two people may dress alike. */
    private static final double MOST = 3;

    /** Before a film has taught anything: kits of one person seen twice are about 0.2 apart, of two persons 0.45. */
    public static final KitLikelihood PRIOR = new KitLikelihood(2.4, -7.5);

    /** Distances at which the prior is held, and how firmly: a standard deviation of one nat at each. */
    private static final double[] PRIOR_DISTANCES = {0.1, 0.6};

    private static final int ITERATIONS = 30;

    public KitLikelihood {
        if (!(intercept >= 0 && slope <= 0)) {
            throw new IllegalArgumentException("a larger distance can't speak for the same person");
        }
    }

    /** Logarithm of p(distance | same person) over p(distance | two persons). */
    public double logRatio(KitColour one, KitColour other) {
        return Math.max(-MOST, Math.min(MOST, intercept + slope * one.distanceTo(other)));
    }

    /**
     * Fits the line.
     *
     * @param same distances between kits of one person at different times
     * @param different distances between kits of two persons
     */
    public static KitLikelihood fit(List<Double> same, List<Double> different) {
        if (same.isEmpty() || different.isEmpty()) {
            return PRIOR;
        }
        double effective = Math.min(same.size(), different.size());
        double a = PRIOR.intercept;
        double b = PRIOR.slope;
        for (int i = 0; i < ITERATIONS; i++) {
            Newton step = new Newton();
            same.forEach(step.sample(1, effective / same.size(), a, b));
            different.forEach(step.sample(0, effective / different.size(), a, b));
            for (double x : PRIOR_DISTANCES) {
                step.prior(x, PRIOR.intercept + PRIOR.slope * x - a - b * x);
            }
            double[] d = step.solve();
            a += d[0];
            b += d[1];
        }
        return new KitLikelihood(Math.max(0, a), Math.min(0, b));
    }

    /** Gradient and curvature of the log-likelihood. */
    private static final class Newton {
        private double g0;
        private double g1;
        private double h00;
        private double h01;
        private double h11;

        java.util.function.Consumer<Double> sample(double label, double weight, double a, double b) {
            return x -> {
                double p = 1 / (1 + Math.exp(-(a + b * x)));
                double w = weight * Math.max(p * (1 - p), 1e-6);
                g0 += weight * (label - p);
                g1 += weight * (label - p) * x;
                h00 += w;
                h01 += w * x;
                h11 += w * x * x;
            };
        }

        void prior(double x, double difference) {
            g0 += difference;
            g1 += difference * x;
            h00 += 1;
            h01 += x;
            h11 += x * x;
        }

        double[] solve() {
            double determinant = h00 * h11 - h01 * h01;
            return new double[] {(h11 * g0 - h01 * g1) / determinant, (h00 * g1 - h01 * g0) / determinant};
        }
    }
}
