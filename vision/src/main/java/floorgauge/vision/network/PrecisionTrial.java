package floorgauge.vision.network;

import floorgauge.court.calibration.OpenCv;
import floorgauge.court.track.ImageBox;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

/**
 * Finds out once which precision this processor computes faster. The choice is remembered in a file, because results must
 * not depend on how busy the machine is on a later run.
 */
public final class PrecisionTrial {

    /** Rounding is accepted only where it saves at least a fifth of the time. */
    private static final double WORTHWHILE = 0.8;

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

    /** Times both precisions on this machine, about a second in all. */
    static Precision faster(ModelFolder models, PoseQuality quality) {
        long single = bestNanos(models, quality, Precision.SINGLE);
        long brief = bestNanos(models, quality, Precision.BFLOAT16);
        return brief < WORTHWHILE * single ? Precision.BFLOAT16 : Precision.SINGLE;
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
