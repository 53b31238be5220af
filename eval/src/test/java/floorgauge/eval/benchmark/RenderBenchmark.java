package floorgauge.eval.benchmark;

import floorgauge.court.calibration.OpenCv;
import floorgauge.sampleclips.render.RenderPlan;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.picture.FrameRenderer;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.truth.FrameTruth;
import floorgauge.vision.film.FilmSettings;
import floorgauge.vision.film.FilmWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * A rendered frame of 1280 x 720 with its truth, ten players and nine others, by a camera that stands and by one that moves; and
 * what coding a frame takes. The clock says frames a second on all cores, the processor's time what a frame costs.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class RenderBenchmark {

    private static final int PIXELS = 1280 * 720;
    private static final int VERTICES = 36_500;
    private static final int TRIANGLES = 66_800;
    /** Eight samples, one for the truth, one for the mirrored picture. */
    private static final int DRAWINGS = 10;
    /** Projecting a vertex takes about thirty operations, setting up a triangle and trying its pixels about forty. */
    private static final double BODIES = DRAWINGS * (30.0 * VERTICES + 40.0 * TRIANGLES);
    /** A channel of a pixel: vignette, noise of its light, its byte; and the shade of the floor point. */
    private static final double DEVELOP = 50.0 * PIXELS;
    /** Ray, wood, paint, lamps and the ray that the varnish mirrors. */
    private static final double ROOM = 150.0 * PIXELS;
    /** Light of the room in, bytes out; vertices in and out. */
    private static final double BYTES = 23.0 * PIXELS + DRAWINGS * 24.0 * VERTICES;

    private static final double RATE = 30;
    private static final double FIRST_SECONDS = 3;
    private static final int FRAMES = 60;

    private FrameRenderer standing;
    private FrameRenderer moving;
    private FilmWriter writer;
    private Path film;
    private Mat[] pictures;
    private int drawn;
    private int coded;

    @Setup
    public void open() throws IOException {
        OpenCv.load();
        standing = renderer(CameraStyle.TRIPOD_SIDE);
        moving = renderer(CameraStyle.PHONE);
        // A benchmark's own warm-up is a few frames long; the compiler takes more.
        for (int i = 0; i < FRAMES; i++) {
            next(standing);
            next(moving);
        }
        pictures = new Mat[4];
        for (int i = 0; i < pictures.length; i++) {
            pictures[i] = new Mat(moving.height(), moving.width(), CvType.CV_8UC3);
            pictures[i].put(0, 0, moving.render(i, FIRST_SECONDS + i / RATE));
        }
        film = Files.createTempFile("coded", ".mp4");
        writer = FilmWriter.create(
                film, FilmSettings.of(moving.width(), moving.height(), RATE).withBitsPerSecond(2_000_000));
    }

    private static FrameRenderer renderer(CameraStyle style) {
        PlayedScene scene = ScenarioLibrary.load("pin-down-sound", 3);
        RenderPlan plan = RenderPlan.of(scene, scene.end(), style, 3);
        return new FrameRenderer(plan.scene(), plan.gym(), plan.path(), plan.settings());
    }

    @TearDown
    public void close() throws IOException {
        standing.close();
        moving.close();
        writer.close();
        Files.delete(film);
        for (Mat picture : pictures) {
            picture.release();
        }
    }

    @Benchmark
    @Floor(work = "a rendered frame, camera on a tripod", operations = BODIES + DEVELOP, bytes = BYTES)
    public FrameTruth tripod() {
        return next(standing);
    }

    @Benchmark
    @Floor(work = "a rendered frame, phone held by hand", operations = BODIES + DEVELOP + ROOM, bytes = BYTES)
    public FrameTruth phone() {
        return next(moving);
    }

    private FrameTruth next(FrameRenderer renderer) {
        int frame = drawn++ % FRAMES;
        double time = FIRST_SECONDS + frame / RATE;
        renderer.render(frame, time);
        return renderer.truth(frame, time);
    }

    /** Each sample is predicted, the rest transformed and written: about ten operations; bytes as for decoding, and BGR in. */
    @Benchmark
    @Floor(work = "a frame of 1280 x 720 coded", operations = 10 * 1.5 * PIXELS, bytes = 6.0 * PIXELS)
    public int code() {
        writer.write(pictures[coded % pictures.length], coded / RATE);
        return ++coded;
    }
}
