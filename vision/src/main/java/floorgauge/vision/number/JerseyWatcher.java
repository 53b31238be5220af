package floorgauge.vision.number;

import floorgauge.court.track.Pose;
import floorgauge.vision.network.NumberBelief;
import floorgauge.vision.network.NumberReader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.opencv.core.Mat;

/**
 * Looks at jerseys now and then as a film's frames stream by: a shirt turns slowly, and looks shortly after one another see the
 * same. Not safe for use by several threads.
 */
public final class JerseyWatcher {

    private static final double INTERVAL_SECONDS = 0.3;

    private final NumberReader reader;
    private double nextLook = Double.NEGATIVE_INFINITY;

    /** @param reader stays the caller's to close */
    public JerseyWatcher(NumberReader reader) {
        this.reader = reader;
    }

    /**
     * Looks at a frame, where it is time to.
     *
     * @param people the joints of each person; empty where they are not known
     * @return one for each person; empty where nobody looked or no chest or back is in view
     */
    public List<Optional<NumberBelief>> look(Mat bgr, double timeSeconds, List<Optional<Pose>> people) {
        List<Optional<NumberBelief>> beliefs = new ArrayList<>(Collections.nCopies(people.size(), Optional.empty()));
        if (timeSeconds < nextLook) {
            return beliefs;
        }
        nextLook = timeSeconds + INTERVAL_SECONDS;
        List<Integer> whose = new ArrayList<>();
        List<Consumer<Mat>> cuts = new ArrayList<>();
        for (int i = 0; i < people.size(); i++) {
            Optional<TorsoCrop> torso = people.get(i).flatMap(TorsoCrop::of);
            if (torso.isPresent()) {
                whose.add(i);
                cuts.add(input -> torso.get().cut(bgr, input));
            }
        }
        List<NumberBelief> read = reader.read(cuts);
        for (int k = 0; k < whose.size(); k++) {
            beliefs.set(whose.get(k), Optional.of(read.get(k)));
        }
        return beliefs;
    }
}
