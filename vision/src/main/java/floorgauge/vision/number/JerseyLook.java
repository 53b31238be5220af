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

/** Reads the jerseys of the people in one frame. */
public final class JerseyLook {

    private JerseyLook() {}

    /**
     * Looks at a frame.
     *
     * @param bgr 8-bit BGR
     * @param people the joints of each person; empty where they are not known
     * @return one for each person; empty where no chest or back is in view
     */
    public static List<Optional<NumberBelief>> read(NumberReader reader, Mat bgr, List<Optional<Pose>> people) {
        List<Optional<NumberBelief>> beliefs = new ArrayList<>(Collections.nCopies(people.size(), Optional.empty()));
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
