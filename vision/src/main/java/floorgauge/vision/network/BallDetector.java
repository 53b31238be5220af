package floorgauge.vision.network;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.PixelPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * Finds the ball in the middle one of three frames, which lie about a thirtieth of a second apart. It was trained on balls of
 * 2 to 15 pixels' radius in its input: choose the scale so.
 *
 * <p>Not thread-safe; owns native memory until closed.
 */
public final class BallDetector implements AutoCloseable {

    /** Frames that the network looks at together. */
    public static final int FRAMES = 3;

    private static final String NETWORK = "ball-detector";

    /** Rows that the network gives, and numbers in a row: score, column, row, radius. */
    private static final int ROWS = 8;

    private static final int COLUMNS = 4;

    private static final double LEAST_RADIUS_PIXELS = 0.5;

    private final Network network;
    private final PictureBatch batch = new PictureBatch();
    private final double leastScore;

    /**
     * Loads the network, computed in single precision.
     *
     * @param leastScore places that score less are left out, 0 to 1
     * @throws NetworkException if its file is missing or damaged
     */
    public BallDetector(ModelFolder models, double leastScore) {
        this(models, leastScore, Precision.SINGLE);
    }

    /**
     * Loads the network.
     *
     * @param leastScore places that score less are left out, 0 to 1
     * @throws NetworkException if its file is missing or damaged
     */
    public BallDetector(ModelFolder models, double leastScore, Precision precision) {
        OpenCv.load();
        this.leastScore = leastScore;
        network = new Network(models, NETWORK, Optional.of(precision));
    }

    /** Sides of the network's input are multiples of this many pixels. */
    public static int sizeStep() {
        return Letterbox.SIZE_STEP;
    }

    /**
     * Balls in the middle frame.
     *
     * @param frames three 8-bit BGR pictures of one size, earliest first; sides multiples of {@link #sizeStep()}
     * @return best first, in pixels of these pictures
     */
    public List<BallSighting> detect(List<Mat> frames) {
        if (frames.size() != FRAMES) {
            throw new IllegalArgumentException("the ball is looked for in " + FRAMES + " frames, not " + frames.size());
        }
        int height = frames.get(0).rows();
        int width = frames.get(0).cols();
        batch.shape(FRAMES, height, width);
        for (int k = 0; k < FRAMES; k++) {
            Mat frame = frames.get(k);
            if (frame.type() != CvType.CV_8UC3 || frame.rows() != height || frame.cols() != width) {
                throw new IllegalArgumentException("frames must be 8-bit BGR and of one size: " + frame);
            }
            Mat input = batch.picture(k);
            frame.copyTo(input);
            input.release();
        }
        return decoded(network.run(batch));
    }

    private List<BallSighting> decoded(float[] rows) {
        List<BallSighting> found = new ArrayList<>();
        // Rows come best first.
        for (int at = 0; at < ROWS * COLUMNS && rows[at] >= leastScore && rows[at] > 0; at += COLUMNS) {
            double radius = Math.max(LEAST_RADIUS_PIXELS, rows[at + 3]);
            found.add(new BallSighting(new PixelPoint(rows[at + 1], rows[at + 2]), radius, rows[at]));
        }
        return found;
    }

    /** Frees the network. */
    @Override
    public void close() {
        network.close();
    }
}
