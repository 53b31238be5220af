package floorgauge.events.trend;

/**
 * Draws the means of a team's players toward the team's mean, the more the less is known of a player (Morris, 1983, "Parametric
 * empirical Bayes inference", JASA 78). The variance between players is that of DerSimonian and Laird (1986): τ² = (Q - (k - 1)) /
 * (Σw - Σw² / Σw), at least 0. With equal variances this is the rule of Efron and Morris, 1 - (k - 3) σ² / Σ(y - ȳ)².
 *
 * @param teamMean weighted by how much is known of each
 * @param betweenVariance τ², how much players differ
 * @param means the shrunk means, in the order given
 * @param errors standard errors of the shrunk means; those given where nothing was shrunk
 */
record EmpiricalBayes(double teamMean, double betweenVariance, double[] means, double[] errors) {

    /** With fewer players the spread between them says nothing, and nobody is drawn anywhere. */
    private static final int FEWEST = 4;

    /**
     * @param means one a player
     * @param variances of the means, above 0
     */
    static EmpiricalBayes shrink(double[] means, double[] variances) {
        int k = means.length;
        double between = betweenVariance(means, variances);
        double team = weightedMean(means, variances, between);
        double[] shrunk = means.clone();
        double[] errors = new double[k];
        for (int i = 0; i < k; i++) {
            double factor = k < FEWEST ? 0 : (k - 3.0) / (k - 1.0) * variances[i] / (variances[i] + between);
            shrunk[i] = team + (1 - factor) * (means[i] - team);
            double doubtOfFactor = k < FEWEST ? 0 : 2 / (k - 3.0) * Math.pow(factor * (means[i] - team), 2);
            errors[i] = Math.sqrt(variances[i] * (1 - (k - 1.0) / k * factor) + doubtOfFactor);
        }
        return new EmpiricalBayes(team, between, shrunk, errors);
    }

    private static double weightedMean(double[] means, double[] variances, double between) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < means.length; i++) {
            sum += means[i] / (variances[i] + between);
            weights += 1 / (variances[i] + between);
        }
        return sum / weights;
    }

    private static double betweenVariance(double[] means, double[] variances) {
        double centre = weightedMean(means, variances, 0);
        double q = 0;
        double weights = 0;
        double squares = 0;
        for (int i = 0; i < means.length; i++) {
            double w = 1 / variances[i];
            q += w * Math.pow(means[i] - centre, 2);
            weights += w;
            squares += w * w;
        }
        double scale = weights - squares / weights;
        return scale > 0 ? Math.max(0, (q - (means.length - 1)) / scale) : 0;
    }
}
