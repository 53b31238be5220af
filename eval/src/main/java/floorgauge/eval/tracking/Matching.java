package floorgauge.eval.tracking;

/** A rule that says, frame by frame, which result stands for which truth. */
@FunctionalInterface
public interface Matching {

    /** The similarity from which a pair counts, where a score does not say otherwise. */
    double DEFAULT_THRESHOLD = 0.5;

    /**
     * What a similarity may fall short of a threshold by rounding alone and still reach it: two boxes that overlap by
     * exactly half are a pair at 0.5.
     */
    double ROUNDING = Math.ulp(1.0);

    EventLog match(SimilarityTable table);

    /** Requires a threshold above 0 and at most 1: at 0 two things with nothing in common would be a pair. */
    static double requireThreshold(double threshold) {
        if (!(threshold > 0 && threshold <= 1)) {
            throw new IllegalArgumentException("a threshold lies above 0 and at most at 1: " + threshold);
        }
        return threshold;
    }
}
