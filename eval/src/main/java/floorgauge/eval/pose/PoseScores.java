package floorgauge.eval.pose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Average precision and recall of the COCO keypoint task (cocodataset.org, keypoint evaluation), over thresholds of the
 * object keypoint similarity from 0.50 to 0.95 in steps of 0.05.
 *
 * @param points in ascending order of threshold
 */
public record PoseScores(List<Point> points) {

    private static final int THRESHOLDS = 10;
    private static final int RECALL_STEPS = 100;

    /**
     * @param threshold least similarity of a match
     * @param averagePrecision mean of the interpolated precision at 101 recalls, 0 to 1; NaN where nothing was to be found
     * @param recall greatest recall, 0 to 1; NaN where nothing was to be found
     */
    public record Point(double threshold, double averagePrecision, double recall) {}

    public PoseScores {
        points = List.copyOf(points);
    }

    /** Scores for people of any size. */
    public static PoseScores of(List<PoseFrame> frames) {
        return of(frames, AreaRange.ALL);
    }

    /** Scores for people of some size; others are neither wanted nor counted against the results. */
    public static PoseScores of(List<PoseFrame> frames, AreaRange range) {
        List<PoseMatcher> matchers =
                frames.stream().map(f -> new PoseMatcher(f, range)).toList();
        long wanted = matchers.stream().mapToLong(PoseMatcher::wanted).sum();
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < THRESHOLDS; i++) {
            double threshold = (50 + 5 * i) / 100.0;
            List<PoseMatcher.Judged> judged = matchers.stream()
                    .flatMap(m -> m.at(threshold).stream())
                    .filter(j -> !j.ignored())
                    .sorted(Comparator.comparingDouble(PoseMatcher.Judged::score)
                            .reversed())
                    .toList();
            points.add(point(threshold, judged, wanted));
        }
        return new PoseScores(points);
    }

    /** AP: mean over thresholds. */
    public double averagePrecision() {
        return points.stream().mapToDouble(Point::averagePrecision).sum() / points.size();
    }

    /** AR: mean over thresholds of the greatest recall. */
    public double averageRecall() {
        return points.stream().mapToDouble(Point::recall).sum() / points.size();
    }

    private static Point point(double threshold, List<PoseMatcher.Judged> judged, long wanted) {
        if (wanted == 0) {
            return new Point(threshold, Double.NaN, Double.NaN);
        }
        double[] recall = new double[judged.size()];
        double[] precision = new double[judged.size()];
        long real = 0;
        for (int i = 0; i < judged.size(); i++) {
            real += judged.get(i).matched() ? 1 : 0;
            recall[i] = (double) real / wanted;
            precision[i] = (double) real / (i + 1);
        }
        for (int i = judged.size() - 2; i >= 0; i--) {
            precision[i] = Math.max(precision[i], precision[i + 1]);
        }
        return new Point(threshold, interpolated(recall, precision), (double) real / wanted);
    }

    private static double interpolated(double[] recall, double[] precision) {
        double sum = 0;
        int at = 0;
        for (int step = 0; step <= RECALL_STEPS; step++) {
            while (at < recall.length && recall[at] < (double) step / RECALL_STEPS) {
                at++;
            }
            sum += at < recall.length ? precision[at] : 0;
        }
        return sum / (RECALL_STEPS + 1);
    }
}
