package floorgauge.vision.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Keeps the best of boxes that cover the same person (greedy non-maximum suppression). */
final class Suppression {

    private static final Comparator<Detection> BEST_FIRST = Comparator.comparingDouble(Detection::score)
            .reversed()
            .thenComparingDouble(d -> d.box().left())
            .thenComparingDouble(d -> d.box().top());

    private Suppression() {}

    /**
     * @param detections in any order
     * @param overlap intersection over union above which the lower of two boxes goes
     * @return those kept, best first
     */
    static List<Detection> apply(List<Detection> detections, double overlap) {
        List<Detection> ordered = new ArrayList<>(detections);
        ordered.sort(BEST_FIRST);
        List<Detection> kept = new ArrayList<>();
        for (Detection candidate : ordered) {
            if (kept.stream().noneMatch(k -> k.box().intersectionOverUnion(candidate.box()) > overlap)) {
                kept.add(candidate);
            }
        }
        return kept;
    }
}
