package floorgauge.vision.network;

import floorgauge.court.calibration.OpenCv;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;

/**
 * Finds people in pictures. The network sees people best who are about 60 to 250 pixels tall in its input: choose the scale
 * so, from the size that players have in this film.
 *
 * <p>Not thread-safe; owns native memory until closed.
 */
public final class PersonDetector implements AutoCloseable {

    private static final String NETWORK = "person-detector";

    /** Rows that the network gives for each picture, and numbers in a row: score, left, top, right, bottom. */
    private static final int ROWS = 100;

    private static final int COLUMNS = 5;

    private final Network network;
    private final DetectorSettings settings;
    private final PictureBatch batch = new PictureBatch();

    /**
     * Loads the network, computed in single precision.
     *
     * @throws NetworkException if its file is missing or damaged
     */
    public PersonDetector(ModelFolder models, DetectorSettings settings) {
        this(models, settings, Precision.SINGLE);
    }

    /**
     * Loads the network.
     *
     * @throws NetworkException if its file is missing or damaged
     */
    public PersonDetector(ModelFolder models, DetectorSettings settings, Precision precision) {
        OpenCv.load();
        this.settings = settings;
        network = new Network(models, NETWORK, Optional.of(precision));
    }

    /** Loads the network from the standard folder, with standard settings. */
    public PersonDetector() {
        this(ModelFolder.standard(), DetectorSettings.standard());
    }

    /**
     * People in a whole picture at its own scale.
     *
     * @param bgr 8-bit BGR of any size
     * @return best first
     */
    public List<Detection> detect(Mat bgr) {
        return detect(bgr, 1);
    }

    /**
     * People in a whole picture.
     *
     * @param bgr 8-bit BGR of any size
     * @param scale network pixels for one picture pixel: 2 enlarges, 0.5 shrinks
     * @return best first, in the picture's own pixels
     */
    public List<Detection> detect(Mat bgr, double scale) {
        return detect(bgr, Letterbox.whole(bgr), scale);
    }

    /**
     * People in a part of a picture.
     *
     * @param bgr 8-bit BGR
     * @param region the part, inside the picture
     * @param scale network pixels for one picture pixel
     * @return best first, in the whole picture's own pixels
     */
    public List<Detection> detect(Mat bgr, Rect region, double scale) {
        return detect(List.of(bgr), region, scale).get(0);
    }

    /**
     * People in the same part of several pictures of one size, in one run of the network.
     *
     * @param pictures 8-bit BGR
     * @param region the part, inside the pictures
     * @param scale network pixels for one picture pixel
     * @return a list for each picture, best first
     */
    public List<List<Detection>> detect(List<Mat> pictures, Rect region, double scale) {
        if (pictures.isEmpty()) {
            return List.of();
        }
        Letterbox letterbox = new Letterbox(region, scale);
        batch.shape(pictures.size(), letterbox.inputHeight(), letterbox.inputWidth());
        for (int i = 0; i < pictures.size(); i++) {
            fill(letterbox, pictures.get(i), i);
        }
        float[] rows = network.run(batch);
        List<List<Detection>> found = new ArrayList<>(pictures.size());
        for (int i = 0; i < pictures.size(); i++) {
            found.add(Suppression.apply(decode(rows, i * ROWS * COLUMNS, letterbox), settings.maxOverlap()));
        }
        return found;
    }

    private void fill(Letterbox letterbox, Mat bgr, int index) {
        if (bgr.type() != CvType.CV_8UC3) {
            throw new IllegalArgumentException("picture must be 8-bit BGR: " + bgr);
        }
        Mat input = batch.picture(index);
        letterbox.fill(bgr, input);
        input.release();
    }

    private List<Detection> decode(float[] rows, int start, Letterbox letterbox) {
        List<Detection> detections = new ArrayList<>();
        // Rows come best first.
        for (int at = start; at < start + ROWS * COLUMNS && rows[at] >= settings.minScore(); at += COLUMNS) {
            boolean hasArea = rows[at + 3] > rows[at + 1] && rows[at + 4] > rows[at + 2];
            if (rows[at] > 0 && hasArea) {
                detections.add(new Detection(
                        letterbox.toPicture(rows[at + 1], rows[at + 2], rows[at + 3], rows[at + 4]), rows[at]));
            }
        }
        return detections;
    }

    /** Frees the network. */
    @Override
    public void close() {
        network.close();
    }
}
