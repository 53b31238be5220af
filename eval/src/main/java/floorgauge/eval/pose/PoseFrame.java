package floorgauge.eval.pose;

import java.util.List;
import java.util.Objects;

/**
 * The labelled and the found poses of one picture.
 *
 * @param truths labelled people
 * @param results found people
 */
public record PoseFrame(List<Truth> truths, List<Result> results) {

    /**
     * @param person labelled
     * @param ignored found or not, it counts for nothing: a person in a crowd, or too small to label
     */
    public record Truth(PosedPerson person, boolean ignored) {

        public Truth {
            Objects.requireNonNull(person, "person");
        }
    }

    /**
     * @param person found
     * @param score the network's confidence; only its order counts
     */
    public record Result(PosedPerson person, double score) {

        public Result {
            Objects.requireNonNull(person, "person");
            if (!Double.isFinite(score)) {
                throw new IllegalArgumentException("score must be finite: " + score);
            }
        }
    }

    public PoseFrame {
        truths = List.copyOf(truths);
        results = List.copyOf(results);
    }
}
