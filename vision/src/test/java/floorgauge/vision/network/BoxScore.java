package floorgauge.vision.network;

import floorgauge.court.track.ImageBox;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Counts of boxes found among those labelled, one to one, at an intersection over union of at least 0.5, best score first. */
final class BoxScore {

    private static final double LEAST_OVERLAP = 0.5;

    private int labelled;
    private int found;
    private int detected;

    void add(List<ImageBox> labels, List<Detection> detections) {
        Set<Integer> taken = new HashSet<>();
        for (Detection detection : detections) {
            int best = best(labels, detection.box(), taken);
            if (best >= 0) {
                taken.add(best);
            }
        }
        labelled += labels.size();
        found += taken.size();
        detected += detections.size();
    }

    private static int best(List<ImageBox> labels, ImageBox box, Set<Integer> taken) {
        int best = -1;
        double overlap = LEAST_OVERLAP;
        for (int i = 0; i < labels.size(); i++) {
            double candidate = labels.get(i).intersectionOverUnion(box);
            if (!taken.contains(i) && candidate >= overlap) {
                best = i;
                overlap = candidate;
            }
        }
        return best;
    }

    double recall() {
        return labelled == 0 ? 1 : (double) found / labelled;
    }

    /** A lower bound where not everybody in the picture is labelled. */
    double precision() {
        return detected == 0 ? 1 : (double) found / detected;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "recall %.2f precision %.2f (%d of %d found, %d boxes)",
                recall(),
                precision(),
                found,
                labelled,
                detected);
    }
}
