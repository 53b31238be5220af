package floorgauge.eval.court.view;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtFollower;
import floorgauge.court.calibration.OpenCv;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.eval.court.FloorErrors;
import floorgauge.eval.statistics.Quantiles;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.camera.Lens;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.render.picture.FrameRenderer;
import floorgauge.sampleclips.render.picture.RenderSettings;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * A film from the stand by a camera that pans from end to end, tilts and zooms, is knocked, and is cut; the court is
 * followed through it and compared with the truth, picture by picture.
 *
 * @param rules of the court
 * @param shared whether other sports' lines lie on the floor
 * @param width of the pictures, pixels
 * @param height of the pictures, pixels
 * @param framesPerSecond of the film
 * @param durationSeconds of the film
 * @param seed of everything else
 */
public record MovingFilm(
        RuleSet rules,
        boolean shared,
        int width,
        int height,
        double framesPerSecond,
        double durationSeconds,
        long seed) {

    private static final double CAMERA_HEIGHT = 5.5;
    private static final double FIELD_OF_VIEW = 62;
    private static final double BARREL = -0.05;
    private static final int SAMPLES = 2;

    /** Errors are taken at floor points in sight this far apart. */
    private static final double GRID_METRES = 1.5;

    public MovingFilm {
        Objects.requireNonNull(rules, "rules");
    }

    /** Where the camera is at an instant. */
    public interface Motion {

        /** Looks at these floor metres, with the focal length multiplied by this. */
        record Aim(double xMetres, double yMetres, double zoom, double rollRadians) {}

        Aim at(double timeSeconds);
    }

    /**
     * Over the whole floor and back every 20 s, up to half as near again, with a hand's unsteadiness.
     *
     * @param halfLength of the court, metres
     */
    public static Motion panning(double halfLength, long seed) {
        return t -> new Motion.Aim(
                0.62 * halfLength * Math.sin(2 * Math.PI * t / 20 + 1.2) + 0.15 * Hash.noise(Hash.of(seed, 1), 1.3 * t),
                0.8 * Hash.noise(Hash.of(seed, 2), 0.3 * t) + 0.08 * Hash.noise(Hash.of(seed, 3), 2 * t),
                1.15 + 0.35 * Math.sin(2 * Math.PI * t / 13),
                0.006 * Hash.noise(Hash.of(seed, 4), 0.8 * t));
    }

    /** Still, then knocked aside at half of the film by some degrees. */
    public Motion knocked() {
        double x = 0.5 * rules.lengthMetres() / 2;
        return t -> t < durationSeconds / 2
                ? new Motion.Aim(x, 0, 1, 0)
                : new Motion.Aim(x - 0.9, 0.4, 1, Math.toRadians(1.2));
    }

    /** Still on one half, then cut to the other. */
    public Motion cut() {
        double x = 0.5 * rules.lengthMetres() / 2;
        return t -> new Motion.Aim(t < durationSeconds / 2 ? x : -x, 0, t < durationSeconds / 2 ? 1 : 1.2, 0);
    }

    /** Turned away to the wall for a second, half way. */
    public Motion lookingAway() {
        double x = 0.5 * rules.lengthMetres() / 2;
        return t ->
                Math.abs(t - durationSeconds / 2) < 0.5 ? new Motion.Aim(40, -3, 1.6, 0) : new Motion.Aim(x, 0, 1, 0);
    }

    /**
     * What came out.
     *
     * @param pictures how many
     * @param lost pictures in which the court was called lost
     * @param unreported pictures in which it lay farther off than 0.30 m in the median without being called lost
     * @param errors at floor points in sight that the calibration supports
     * @param squaredNormalised mean of squared error over covariance there
     * @param secondsAPicture median processor time of following, all threads together
     * @param log a line a second
     */
    public record Outcome(
            int pictures,
            int lost,
            int unreported,
            double[] errors,
            double squaredNormalised,
            double secondsAPicture,
            List<String> log) {

        /** Quantile of the error at supported floor points, metres. */
        public double errorQuantileMetres(double p) {
            return Quantiles.of(errors, p);
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d pictures, %d lost, %d unreported, median %.3f m, 95th percentile %.3f m, squared error over"
                            + " covariance %.2f, %.1f ms a picture",
                    pictures,
                    lost,
                    unreported,
                    errorQuantileMetres(0.5),
                    errorQuantileMetres(0.95),
                    squaredNormalised,
                    1000 * secondsAPicture);
        }
    }

    private CameraPath path(Gym gym, Motion motion) {
        Lens lens = Lens.ofFieldOfView(width, height, FIELD_OF_VIEW, BARREL);
        double[] from = {1.5, -gym.halfWidthMetres() + 0.6, CAMERA_HEIGHT};
        return t -> {
            Motion.Aim aim = motion.at(t);
            return Camera.lookingAt(
                    lens.zoomed(aim.zoom()), from, new double[] {aim.xMetres(), aim.yMetres(), 0.4}, aim.rollRadians());
        };
    }

    /** Hears of each picture; the picture is reused. */
    public interface Watcher {
        /** @param found where the court was placed */
        void picture(int index, Mat bgr, CourtCalibration found);
    }

    /** Renders, follows and compares. */
    public Outcome follow(Motion motion, Watcher watcher) {
        OpenCv.load();
        Gym gym = CourtView.laid(shared ? Gym.school(rules, 0.2, seed) : Gym.clean(rules, seed), seed);
        Scene scene = new Milling(rules, CourtEnd.POSITIVE_X, durationSeconds + 1, seed);
        CameraPath path = path(gym, motion);
        RenderSettings settings = RenderSettings.standard(seed).withSamples(SAMPLES);
        Mat picture = new Mat(height, width, CvType.CV_8UC3);
        try (FrameRenderer renderer = new FrameRenderer(scene, gym, path, settings);
                CourtFollower follower = new CourtFollower(Optional.of(rules))) {
            Comparison comparison = new Comparison();
            int count = (int) Math.round(durationSeconds * framesPerSecond);
            for (int i = 0; i < count; i++) {
                double t = i / framesPerSecond;
                picture.put(0, 0, renderer.render(i, t));
                long start = ProcessorTime.nanoseconds();
                CourtCalibration found = follower.next(picture, t);
                comparison.add(
                        t, found, path.at(t + settings.shutterSeconds() / 2), ProcessorTime.nanoseconds() - start);
                watcher.picture(i, picture, found);
            }
            return comparison.outcome();
        } finally {
            picture.release();
        }
    }

    /** Sums up over the pictures. */
    private final class Comparison {
        private final List<FloorErrors.Sample> samples = new ArrayList<>();
        private final List<Double> times = new ArrayList<>();
        private final List<String> log = new ArrayList<>();
        private int pictures;
        private int lost;
        private int unreported;
        private Boolean turned;
        private final List<FloorPoint> grid = new ArrayList<>();

        Comparison() {
            for (double x = -rules.lengthMetres() / 2; x <= rules.lengthMetres() / 2; x += GRID_METRES) {
                for (double y = -rules.widthMetres() / 2; y <= rules.widthMetres() / 2; y += GRID_METRES) {
                    grid.add(new FloorPoint(x, y));
                }
            }
        }

        void add(double t, CourtCalibration found, Camera camera, long nanoseconds) {
            pictures++;
            times.add(nanoseconds * 1e-9);
            if (found.status() == CalibrationStatus.NONE) {
                lost++;
                log.add(String.format(Locale.ROOT, "%.2f s: %s", t, found.reason()));
                turned = null;
                return;
            }
            List<FloorErrors.Sample> straight = samples(found, camera, false);
            List<FloorErrors.Sample> half = samples(found, camera, true);
            if (turned == null) {
                // A court turned by 180 degrees is the same court, but not from one picture to the next.
                turned = median(half) < median(straight);
            }
            List<FloorErrors.Sample> own = turned ? half : straight;
            samples.addAll(own);
            boolean wrong = median(own) > ViewOutcome.FOUND_METRES;
            unreported += wrong ? 1 : 0;
            if (wrong || pictures % (int) Math.ceil(framesPerSecond) == 1) {
                log.add(String.format(
                        Locale.ROOT, "%.2f s: %s, %.3f m; %s", t, found.status(), median(own), found.reason()));
            }
        }

        private double median(List<FloorErrors.Sample> of) {
            return Quantiles.of(
                    of.stream().mapToDouble(FloorErrors.Sample::distanceMetres).toArray(), 0.5);
        }

        private List<FloorErrors.Sample> samples(CourtCalibration found, Camera camera, boolean turn) {
            List<FloorErrors.Sample> out = new ArrayList<>();
            for (FloorPoint at : grid) {
                Optional<PixelPoint> pixel = camera.pixelAt(at.xMetres(), at.yMetres(), 0)
                        .filter(p -> p.x() >= 0 && p.y() >= 0 && p.x() <= width - 1 && p.y() <= height - 1);
                Optional<FloorEstimate> estimate = pixel.flatMap(p -> found.estimate(p, 0, 0));
                estimate.filter(e -> found.supports(e.mean()))
                        .ifPresent(e -> out.add(new FloorErrors.Sample(turn ? at.turnedHalf() : at, e)));
            }
            return out;
        }

        Outcome outcome() {
            return new Outcome(
                    pictures,
                    lost,
                    unreported,
                    samples.stream()
                            .mapToDouble(FloorErrors.Sample::distanceMetres)
                            .toArray(),
                    samples.stream()
                            .mapToDouble(FloorErrors.Sample::squaredNormalisedDistance)
                            .average()
                            .orElse(Double.NaN),
                    Quantiles.of(times.stream().mapToDouble(Double::doubleValue).toArray(), 0.5),
                    log);
        }
    }
}
