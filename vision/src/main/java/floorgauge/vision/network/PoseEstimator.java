package floorgauge.vision.network;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * Finds the joints of the person in each box: the person nearest the box's middle. The people of several pictures run through
 * the network together.
 *
 * <p>Not thread-safe; owns native memory until closed.
 */
public final class PoseEstimator implements AutoCloseable {

    /** People in one run of the network; more are taken in turns, so that memory stays bounded. */
    private static final int MOST_AT_ONCE = 10;

    /** The network is prepared anew for every number of people, so only these are run; what is over is computed in vain. */
    private static final int[] BATCH_SIZES = {1, 2, 3, 5, 7, MOST_AT_ONCE};

    private static final int JOINTS = Joint.values().length;

    /** Numbers for each joint: y and x as shares of the crop's side, score. */
    private static final int COLUMNS = 3;

    private final PoseQuality quality;
    private final Network network;
    private final PictureBatch batch = new PictureBatch();

    /**
     * Loads the network.
     *
     * @throws NetworkException if its file is missing or damaged
     */
    public PoseEstimator(ModelFolder models, PoseQuality quality, Precision precision) {
        OpenCv.load();
        this.quality = quality;
        network = new Network(models, quality.network(), Optional.of(precision));
    }

    /**
     * Loads the network, computed in single precision.
     *
     * @throws NetworkException if its file is missing or damaged
     */
    public PoseEstimator(ModelFolder models, PoseQuality quality) {
        this(models, quality, Precision.SINGLE);
    }

    /** Loads the fast network from the standard folder. */
    public PoseEstimator() {
        this(ModelFolder.standard(), PoseQuality.FAST);
    }

    /**
     * The joints of the people in one picture.
     *
     * @param bgr 8-bit BGR
     * @param people their boxes, in the picture's pixels
     * @return one pose for each box, in the picture's pixels
     */
    public List<Pose> estimate(Mat bgr, List<ImageBox> people) {
        return estimate(List.of(bgr), List.of(people)).get(0);
    }

    /**
     * The joints of the people in several pictures.
     *
     * @param pictures 8-bit BGR, of any sizes
     * @param people their boxes, a list for each picture
     * @return a list for each picture, one pose for each box
     */
    public List<List<Pose>> estimate(List<Mat> pictures, List<List<ImageBox>> people) {
        if (pictures.size() != people.size()) {
            throw new IllegalArgumentException(pictures.size() + " pictures but " + people.size() + " lists of boxes");
        }
        List<Task> tasks = tasks(pictures, people);
        List<Pose> poses = new ArrayList<>(tasks.size());
        for (int start = 0; start < tasks.size(); start += MOST_AT_ONCE) {
            poses.addAll(run(tasks.subList(start, Math.min(tasks.size(), start + MOST_AT_ONCE))));
        }
        return byPicture(poses, people);
    }

    /** A square to cut out of a picture. */
    private record Task(Mat picture, PoseCrop crop) {}

    private static List<Task> tasks(List<Mat> pictures, List<List<ImageBox>> people) {
        List<Task> tasks = new ArrayList<>();
        for (int i = 0; i < pictures.size(); i++) {
            Mat picture = pictures.get(i);
            if (picture.type() != CvType.CV_8UC3) {
                throw new IllegalArgumentException("picture must be 8-bit BGR: " + picture);
            }
            people.get(i).forEach(box -> tasks.add(new Task(picture, PoseCrop.around(box))));
        }
        return tasks;
    }

    private List<Pose> run(List<Task> tasks) {
        batch.shape(sizeFor(tasks.size()), quality.side(), quality.side());
        for (int i = 0; i < tasks.size(); i++) {
            Mat input = batch.picture(i);
            tasks.get(i).crop().cut(tasks.get(i).picture(), input);
            input.release();
        }
        float[] rows = network.run(batch);
        List<Pose> poses = new ArrayList<>(tasks.size());
        for (int i = 0; i < tasks.size(); i++) {
            poses.add(decode(rows, i * JOINTS * COLUMNS, tasks.get(i).crop()));
        }
        return poses;
    }

    private static int sizeFor(int people) {
        for (int size : BATCH_SIZES) {
            if (size >= people) {
                return size;
            }
        }
        throw new IllegalArgumentException("more than " + MOST_AT_ONCE + " people at once: " + people);
    }

    private static Pose decode(float[] rows, int start, PoseCrop crop) {
        List<Keypoint> keypoints = new ArrayList<>(JOINTS);
        for (int at = start; at < start + JOINTS * COLUMNS; at += COLUMNS) {
            double score = Math.min(1, Math.max(0, rows[at + 2]));
            keypoints.add(new Keypoint(crop.toPicture(rows[at + 1], rows[at]), score));
        }
        return new Pose(keypoints);
    }

    private static List<List<Pose>> byPicture(List<Pose> poses, List<List<ImageBox>> people) {
        List<List<Pose>> result = new ArrayList<>(people.size());
        int at = 0;
        for (List<ImageBox> boxes : people) {
            result.add(List.copyOf(poses.subList(at, at + boxes.size())));
            at += boxes.size();
        }
        return result;
    }

    /** Frees the network. */
    @Override
    public void close() {
        network.close();
    }
}
