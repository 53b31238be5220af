package floorgauge.eval.pose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Matches the poses of one picture at one threshold as cocoapi does: results in descending order of score, each with the most
 * similar truth that is still free, truths that count before those that are ignored.
 */
final class PoseMatcher {

    /** The COCO keypoint task looks at no more results in a picture. */
    private static final int MOST_RESULTS = 20;

    private final List<PoseFrame.Result> results;
    private final List<PoseFrame.Truth> truths;
    private final boolean[] ignoredTruth;
    private final AreaRange range;
    private final double[][] similarity;

    /** What became of a result. */
    record Judged(double score, boolean matched, boolean ignored) {}

    PoseMatcher(PoseFrame frame, AreaRange range) {
        this.range = range;
        results = frame.results().stream()
                .sorted(Comparator.comparingDouble(PoseFrame.Result::score).reversed())
                .limit(MOST_RESULTS)
                .toList();
        truths = frame.truths().stream()
                .sorted(Comparator.comparing(this::ignored))
                .toList();
        ignoredTruth = new boolean[truths.size()];
        similarity = new double[results.size()][truths.size()];
        ObjectKeypointSimilarity oks = new ObjectKeypointSimilarity();
        for (int t = 0; t < truths.size(); t++) {
            ignoredTruth[t] = ignored(truths.get(t));
            for (int r = 0; r < results.size(); r++) {
                similarity[r][t] = oks.of(truths.get(t).person(), results.get(r).person());
            }
        }
    }

    /** Truths that have to be found. */
    long wanted() {
        return truths.stream().filter(t -> !ignored(t)).count();
    }

    List<Judged> at(double threshold) {
        boolean[] taken = new boolean[truths.size()];
        List<Judged> judged = new ArrayList<>();
        for (int r = 0; r < results.size(); r++) {
            int match = best(r, threshold, taken);
            boolean ignored;
            if (match >= 0) {
                taken[match] = true;
                ignored = ignoredTruth[match];
            } else {
                ignored = !range.holds(results.get(r).person().areaSquarePixels());
            }
            judged.add(new Judged(results.get(r).score(), match >= 0, ignored));
        }
        return judged;
    }

    private int best(int result, double threshold, boolean[] taken) {
        int match = -1;
        double atLeast = Math.min(threshold, 1 - 1e-10);
        for (int t = 0; t < truths.size(); t++) {
            boolean onlyIgnoredLeft = match >= 0 && !ignoredTruth[match] && ignoredTruth[t];
            if (onlyIgnoredLeft) {
                break;
            }
            if (!taken[t] && similarity[result][t] >= atLeast) {
                atLeast = similarity[result][t];
                match = t;
            }
        }
        return match;
    }

    private boolean ignored(PoseFrame.Truth truth) {
        return truth.ignored()
                || truth.person().labelled().isEmpty()
                || !range.holds(truth.person().areaSquarePixels());
    }
}
