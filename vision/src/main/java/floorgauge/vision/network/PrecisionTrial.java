package floorgauge.vision.network;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Pose;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;

/**
 * Finds out once in which precision the networks are computed on this processor: in the shorter one where that is faster and gives
 * answers like the other's. How far answers shift on real pictures is measured elsewhere (the networks' cards in models/); what is
 * looked at here is whether this processor's short numbers work at all, on drawn pictures whose faint answers shift more than a
 * person's. The choice is remembered in a file, because results must not depend on how busy the machine is on a later run.
 */
public final class PrecisionTrial {

    /** System property that names the file in which the choice is kept. */
    public static final String PROPERTY = "floorgauge.precision";

    /** Rounding is accepted only where it saves at least a fifth of the time. */
    private static final double WORTHWHILE = 0.8;

    /** Half of the joints of the drawn figure may shift by this share of the picture's side. */
    private static final double MOST_SHIFT = 0.1;

    private static final double LEAST_SCORE = 0.05;

    /** Intersection over union of a box with the same one in the other precision. */
    private static final double LEAST_OVERLAP = 0.9;

    /** The ball's centre may shift by this share of its radius. */
    private static final double MOST_BALL_SHIFT = 0.2;

    private static final int RUNS = 5;
    private static final int PEOPLE = 5;
    private static final int WIDTH = 640;
    private static final int HEIGHT = 384;

    private PrecisionTrial() {}

    /**
     * The precision remembered in the file; where there is none, it is tried and written there. A file that cannot be
     * written is no failure: the trial then repeats next time.
     *
     * @param memory holds the name of the precision
     * @throws NetworkException if the network cannot be loaded
     */
    public static Precision remembered(Path memory, ModelFolder models) {
        try {
            return Precision.valueOf(Files.readString(memory).strip());
        } catch (IOException | IllegalArgumentException e) {
            Precision chosen = faster(models);
            write(memory, chosen);
            return chosen;
        }
    }

    private static void write(Path memory, Precision chosen) {
        try {
            Files.createDirectories(memory.toAbsolutePath().getParent());
            Files.writeString(memory, chosen + "\n");
        } catch (IOException e) {
            System.getLogger(PrecisionTrial.class.getName())
                    .log(System.Logger.Level.DEBUG, "the chosen precision cannot be remembered", e);
        }
    }

    /**
     * The file in which this user's choice on this machine is kept: named by the system property {@value #PROPERTY}, else
     * under the folder for what programs can compute again.
     */
    public static Path standardMemory() {
        String named = System.getProperty(PROPERTY, "");
        if (!named.isBlank()) {
            return Path.of(named);
        }
        String cache = System.getenv("XDG_CACHE_HOME");
        Path folder = cache == null || cache.isBlank()
                ? Path.of(System.getProperty("user.home", "."), ".cache")
                : Path.of(cache);
        return folder.resolve("floorgauge").resolve("precision");
    }

    /** Tries both precisions on this machine, some seconds in all. */
    static Precision faster(ModelFolder models) {
        if (!holds(models)) {
            return Precision.SINGLE;
        }
        long single = bestNanos(models, Precision.SINGLE);
        long brief = bestNanos(models, Precision.BFLOAT16);
        return brief < WORTHWHILE * single ? Precision.BFLOAT16 : Precision.SINGLE;
    }

    /** Whether both precisions give about the same on the networks' golden pictures; no where a picture is missing. */
    static boolean holds(ModelFolder models) {
        OpenCv.load();
        return posesHold(models) && boxesHold(models) && ballHolds(models);
    }

    private static Mat golden(ModelFolder models, String network) {
        return Imgcodecs.imread(
                models.path().resolve("golden").resolve(network + ".png").toString(), Imgcodecs.IMREAD_COLOR);
    }

    private static boolean posesHold(ModelFolder models) {
        Mat picture = golden(models, PoseQuality.FAST.network());
        try {
            return !picture.empty()
                    && medianShift(pose(models, Precision.SINGLE, picture), pose(models, Precision.BFLOAT16, picture))
                            <= MOST_SHIFT * picture.rows();
        } finally {
            picture.release();
        }
    }

    private static Pose pose(ModelFolder models, Precision precision, Mat picture) {
        try (PoseEstimator estimator = new PoseEstimator(models, PoseQuality.FAST, precision)) {
            ImageBox whole = new ImageBox(0, 0, picture.cols() / PoseCrop.MARGIN, picture.rows() / PoseCrop.MARGIN);
            return estimator.estimate(picture, List.of(whole)).get(0);
        }
    }

    private static double medianShift(Pose one, Pose other) {
        double[] shifts = Arrays.stream(Joint.values())
                .mapToDouble(j -> one.at(j).position().distanceTo(other.at(j).position()))
                .sorted()
                .toArray();
        return shifts[shifts.length / 2];
    }

    /** Everybody found in one precision is found in the other, about where they were. */
    private static boolean boxesHold(ModelFolder models) {
        Mat picture = golden(models, "person-detector");
        try {
            if (picture.empty()) {
                return false;
            }
            List<Detection> brief = people(models, Precision.BFLOAT16, picture);
            return people(models, Precision.SINGLE, picture).stream()
                    .allMatch(d -> brief.stream()
                            .anyMatch(other -> other.box().intersectionOverUnion(d.box()) >= LEAST_OVERLAP));
        } finally {
            picture.release();
        }
    }

    private static List<Detection> people(ModelFolder models, Precision precision, Mat picture) {
        try (PersonDetector detector =
                new PersonDetector(models, new DetectorSettings(2 * LEAST_SCORE, 0.5), precision)) {
            return detector.detect(picture);
        }
    }

    /** The golden picture holds the three frames one above the other. */
    private static boolean ballHolds(ModelFolder models) {
        Mat strip = golden(models, "ball-detector");
        if (strip.empty()) {
            return false;
        }
        int height = strip.rows() / BallDetector.FRAMES;
        List<Mat> frames = IntStream.range(0, BallDetector.FRAMES)
                .mapToObj(k -> strip.submat(k * height, (k + 1) * height, 0, strip.cols()))
                .toList();
        try {
            List<BallSighting> single = balls(models, Precision.SINGLE, frames);
            List<BallSighting> brief = balls(models, Precision.BFLOAT16, frames);
            return !single.isEmpty()
                    && !brief.isEmpty()
                    && single.get(0).centre().distanceTo(brief.get(0).centre())
                            <= MOST_BALL_SHIFT * single.get(0).radiusPixels();
        } finally {
            frames.forEach(Mat::release);
            strip.release();
        }
    }

    private static List<BallSighting> balls(ModelFolder models, Precision precision, List<Mat> frames) {
        try (BallDetector detector = new BallDetector(models, LEAST_SCORE, precision)) {
            return detector.detect(frames);
        }
    }

    /** What a frame costs that is looked at for people, their poses and the ball. */
    private static long bestNanos(ModelFolder models, Precision precision) {
        Mat picture = new Mat(HEIGHT, WIDTH, CvType.CV_8UC3, Scalar.all(128));
        List<ImageBox> people = Collections.nCopies(PEOPLE, new ImageBox(40, 20, 60, 120));
        long[] nanos = new long[RUNS];
        try (PersonDetector detector = new PersonDetector(models, DetectorSettings.standard(), precision);
                PoseEstimator estimator = new PoseEstimator(models, PoseQuality.FAST, precision);
                BallDetector balls = new BallDetector(models, LEAST_SCORE, precision)) {
            for (int i = -1; i < RUNS; i++) {
                long start = System.nanoTime();
                detector.detect(picture);
                estimator.estimate(picture, people);
                balls.detect(List.of(picture, picture, picture));
                if (i >= 0) {
                    nanos[i] = System.nanoTime() - start;
                }
            }
        } finally {
            picture.release();
        }
        return Arrays.stream(nanos).min().orElseThrow();
    }
}
