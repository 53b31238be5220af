package floorgauge.vision.body;

/**
 * A number with its standard deviation.
 *
 * @param sigma above 0
 */
record Guess(double value, double sigma) {

    /**
     * What both say, taken as independent: weighted by one over their variances. Where they contradict each other the
     * deviation grows by the ratio of their distance to what it should be (R. Birge, "The calculation of errors by the method
     * of least squares", 1932).
     */
    Guess with(Guess other) {
        double a = 1 / (sigma * sigma);
        double b = 1 / (other.sigma * other.sigma);
        double ratio = Math.abs(value - other.value) / Math.hypot(sigma, other.sigma);
        return new Guess((a * value + b * other.value) / (a + b), Math.max(1, ratio) / Math.sqrt(a + b));
    }
}
