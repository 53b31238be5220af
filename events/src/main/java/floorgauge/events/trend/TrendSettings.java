package floorgauge.events.trend;

/**
 * How intervals are made.
 *
 * @param confidence of every interval, above 0 and below 1
 * @param resamples of the bootstrap, at least 100
 * @param seed of the bootstrap; the same seed gives the same bytes
 */
public record TrendSettings(double confidence, int resamples, long seed) {

    private static final double USUAL_CONFIDENCE = 0.90;
    private static final int USUAL_RESAMPLES = 2000;

    public TrendSettings {
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException("a confidence lies between 0 and 1: " + confidence);
        }
        if (resamples < 100) {
            throw new IllegalArgumentException("a bootstrap takes at least 100 resamples: " + resamples);
        }
    }

    /** Intervals of 90 %, 2000 resamples, a fixed seed. */
    public static TrendSettings usual() {
        return new TrendSettings(USUAL_CONFIDENCE, USUAL_RESAMPLES, 1);
    }
}
