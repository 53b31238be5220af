package floorgauge.vision.ball;

import floorgauge.vision.network.BallSighting;
import java.util.List;
import java.util.function.Consumer;
import org.opencv.core.Mat;

/** Finds balls in pictures, at once or later. */
@FunctionalInterface
public interface BallSearch {

    /**
     * @param three pictures as {@link floorgauge.vision.network.BallDetector#detect} takes them; freed when they have been looked at
     * @param found hears of the balls in the middle one; results come in the order in which they were asked for
     */
    void find(List<Mat> three, Consumer<List<BallSighting>> found);
}
