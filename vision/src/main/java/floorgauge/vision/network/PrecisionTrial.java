package floorgauge.vision.network;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Pose;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;

/**
 * Finds out once in which precision poses are computed on this processor: in the shorter one where that is faster and the joints
 * stay where they are. The choice is remembered in a file, because results must not depend on how busy the machine is on a later
 * run. The detector and the ball's network are not asked: sizes of boxes suffer from the shorter numbers.
 */
public final class PrecisionTrial {

    /** System property that names the file in which the choice is kept. */
    public static final String PROPERTY = "floorgauge.precision";

    /** Rounding is accepted only where it saves at least a fifth of the time. */
    private static final double WORTHWHILE = 0.8;

    /** Joints may shift by this share of the crop's side, about a hundredth of a person's height. */
    private static final double MOST_SHIFT = 0.01;

    private static final double LEAST_JOINT_SCORE = 0.3;

    private static final int RUNS = 5;
    private static final int PEOPLE = 4;

    private PrecisionTrial() {}

    /**
     * The precision remembered in the file; where there is none, it is tried and written there. A file that cannot be
     * written is no failure: the trial then repeats next time.
     *
     * @param memory holds the name of the precision
     * @throws NetworkException if the network cannot be loaded
     */
    public static Precision remembered(Path memory, ModelFolder models, PoseQuality quality) {
        try {
            return Precision.valueOf(Files.readString(memory).strip());
        } catch (IOException | IllegalArgumentException e) {
            Precision chosen = faster(models, quality);
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
        return folder.resolve("floorgauge").resolve("pose-precision");
    }

    /** Tries both precisions on this machine, about a second in all. */
    static Precision faster(ModelFolder models, PoseQuality quality) {
        if (!holds(models, quality)) {
            return Precision.SINGLE;
        }
        long single = bestNanos(models, quality, Precision.SINGLE);
        long brief = bestNanos(models, quality, Precision.BFLOAT16);
        return brief < WORTHWHILE * single ? Precision.BFLOAT16 : Precision.SINGLE;
    }

    /** Whether the joints of the network's own golden picture stay where they are; no where there is no such picture. */
    private static boolean holds(ModelFolder models, PoseQuality quality) {
        OpenCv.load();
        Path file = models.path().resolve("golden").resolve(quality.network() + ".png");
        Mat picture = Imgcodecs.imread(file.toString(), Imgcodecs.IMREAD_COLOR);
        try {
            return !picture.empty()
                    && shift(
                                    pose(models, quality, Precision.SINGLE, picture),
                                    pose(models, quality, Precision.BFLOAT16, picture))
                            <= MOST_SHIFT * picture.rows();
        } finally {
            picture.release();
        }
    }

    private static Pose pose(ModelFolder models, PoseQuality quality, Precision precision, Mat picture) {
        try (PoseEstimator estimator = new PoseEstimator(models, quality, precision)) {
            ImageBox whole = new ImageBox(0, 0, picture.cols() / PoseCrop.MARGIN, picture.rows() / PoseCrop.MARGIN);
            return estimator.estimate(picture, List.of(whole)).get(0);
        }
    }

    private static double shift(Pose one, Pose other) {
        double most = 0;
        for (Joint joint : Joint.values()) {
            if (one.at(joint).score() >= LEAST_JOINT_SCORE) {
                PixelPoint a = one.at(joint).position();
                PixelPoint b = other.at(joint).position();
                most = Math.max(most, Math.hypot(a.x() - b.x(), a.y() - b.y()));
            }
        }
        return most;
    }

    private static long bestNanos(ModelFolder models, PoseQuality quality, Precision precision) {
        OpenCv.load();
        Mat picture = new Mat(quality.side(), quality.side(), CvType.CV_8UC3, Scalar.all(128));
        List<ImageBox> people = Collections.nCopies(PEOPLE, new ImageBox(40, 20, 60, 120));
        long[] nanos = new long[RUNS];
        try (PoseEstimator estimator = new PoseEstimator(models, quality, precision)) {
            estimator.estimate(picture, people);
            for (int i = 0; i < RUNS; i++) {
                long start = System.nanoTime();
                estimator.estimate(picture, people);
                nanos[i] = System.nanoTime() - start;
            }
        } finally {
            picture.release();
        }
        return Arrays.stream(nanos).min().orElseThrow();
    }
}
