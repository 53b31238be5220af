package floorgauge.vision.background;

import floorgauge.vision.film.FilmFrame;
import floorgauge.vision.film.FilmReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Reads a film once and keeps the temporal median of each stretch of it (N. McFarlane and C. Schofield, "Segmentation and
 * tracking of piglets in images", 1995, for the median as a background): a few dozen pictures a stretch, small, so that an
 * hour takes some megabytes.
 */
public final class BackgroundScan {

    /** Light changes over minutes; players seldom stand still for this long. */
    private static final double STRETCH_SECONDS = 90;

    private static final int SAMPLES = 31;

    /** Fewer pictures have no median worth the name. */
    private static final int LEAST_SAMPLES = 5;

    /** In less time a player who waits for a pass does not move out of his own way and would count as part of the hall. */
    private static final double LEAST_SECONDS = 4;

    private BackgroundScan() {}

    /**
     * Scans a film.
     *
     * @throws floorgauge.vision.film.FilmException if it can't be read
     */
    public static BackgroundModel scan(Path film) {
        List<BackgroundModel.Stretch> stretches = new ArrayList<>();
        try (FilmReader reader = FilmReader.open(film);
                FilmFrame frame = new FilmFrame()) {
            double duration = reader.info().durationSeconds();
            double length = Double.isNaN(duration) ? STRETCH_SECONDS : Math.min(STRETCH_SECONDS, duration);
            double step = length / SAMPLES;
            Size size =
                    BackgroundModel.size(reader.info().width(), reader.info().height());
            Collector collector = new Collector(size);
            double start = 0;
            double next = 0;
            double last = 0;
            while (reader.read(frame)) {
                double t = frame.timeSeconds();
                if (t >= start + STRETCH_SECONDS) {
                    collector.finish(start, last).ifPresent(stretches::add);
                    start += STRETCH_SECONDS * Math.floor((t - start) / STRETCH_SECONDS);
                }
                if (t >= next) {
                    collector.add(frame.bgr());
                    next = t + step;
                }
                last = t;
            }
            collector.finish(start, last).ifPresent(stretches::add);
        }
        return new BackgroundModel(stretches);
    }

    /** The pictures of one stretch. */
    private static final class Collector {
        private final Size size;
        private final Mat small = new Mat();
        private final List<byte[]> samples = new ArrayList<>();

        Collector(Size size) {
            this.size = size;
        }

        void add(Mat bgr) {
            Imgproc.resize(bgr, small, size, 0, 0, Imgproc.INTER_AREA);
            byte[] values = new byte[(int) (size.area() * 3)];
            small.get(0, 0, values);
            samples.add(values);
        }

        java.util.Optional<BackgroundModel.Stretch> finish(double startSeconds, double endSeconds) {
            if (samples.size() < LEAST_SAMPLES || endSeconds - startSeconds < LEAST_SECONDS) {
                samples.clear();
                return java.util.Optional.empty();
            }
            byte[] median = medians(samples);
            byte[] spread = medians(deviations(samples, median));
            BackgroundModel.Stretch stretch = new BackgroundModel.Stretch(
                    startSeconds, mat(median), mat(spread), BackgroundModel.isStatic(samples, median, spread));
            samples.clear();
            return java.util.Optional.of(stretch);
        }

        private Mat mat(byte[] values) {
            Mat mat = new Mat(size, CvType.CV_8UC3);
            mat.put(0, 0, values);
            return mat;
        }
    }

    private static List<byte[]> deviations(List<byte[]> samples, byte[] median) {
        List<byte[]> result = new ArrayList<>();
        for (byte[] sample : samples) {
            byte[] deviation = new byte[sample.length];
            for (int i = 0; i < sample.length; i++) {
                deviation[i] = (byte) Math.abs((sample[i] & 0xFF) - (median[i] & 0xFF));
            }
            result.add(deviation);
        }
        return result;
    }

    private static byte[] medians(List<byte[]> samples) {
        byte[] result = new byte[samples.get(0).length];
        int[] column = new int[samples.size()];
        for (int i = 0; i < result.length; i++) {
            for (int k = 0; k < column.length; k++) {
                column[k] = samples.get(k)[i] & 0xFF;
            }
            java.util.Arrays.sort(column);
            result[i] = (byte) column[column.length / 2];
        }
        return result;
    }
}
