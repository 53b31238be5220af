package floorgauge.eval.benchmark;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CameraWatch;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtCalibrator;
import floorgauge.court.calibration.CourtFollower;
import floorgauge.court.calibration.CourtSearchSteps;
import floorgauge.court.calibration.LinesFit;
import floorgauge.court.calibration.SavedCourt;
import floorgauge.court.lines.RidgeFinder;
import floorgauge.court.lines.RidgePoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.eval.court.view.CourtView;
import floorgauge.eval.court.view.MovingFilm;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.opencv.core.Mat;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** The court in rendered pictures of 1280 x 720: found once from six, and followed through a film whose camera pans. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(1)
public class CourtLinesBenchmark {

    private static final int PICTURES = 6;
    private static final long SEED = 1;
    /** The panning film is that of the test of moving films: its first picture shows the court. */
    private static final long FILM_SEED = 9001;

    private static final double INTERVAL_SECONDS = 0.04;

    /** Pictures of the panning film, which is gone through to and fro. */
    private static final int PANNED = 16;

    /** So many are followed before anything is timed: a film has thousands, and its first seconds compile the program. */
    private static final int WARM = 300;

    private List<Mat> frames;
    private final List<Mat> panned = new ArrayList<>();
    private int shown;
    private RuleSet rules;
    private Optional<CourtFollower> follower = Optional.empty();
    private CameraWatch watch;
    private SavedCourt saved;
    private CourtSearchSteps steps;
    private double time;

    @Setup
    public void render() {
        CourtView view = CourtView.of(SEED);
        rules = view.rules();
        frames = view.frames(PICTURES);
        saved = new SavedCourt(Path.of("hall.yaml"), CourtCalibrator.fromLines(Optional.of(rules), frames));
        steps = new CourtSearchSteps(saved.calibration(), frames.get(0));
        watch = new CameraWatch();
        watch.look(frames.get(0));
    }

    @TearDown
    public void free() {
        follower.ifPresent(CourtFollower::close);
        watch.close();
        frames.forEach(Mat::release);
        panned.forEach(Mat::release);
    }

    /** Every picture is read, and each of its pixels compared with its neighbours across a line in two directions. */
    @Benchmark
    @Floor(
            work = "the court from the lines of six pictures",
            operations = 6 * 1280 * 720 * 3 * 4.0,
            bytes = 6 * 1280 * 720 * 3)
    public CourtCalibration fromLines() {
        return CourtCalibrator.fromLines(Optional.of(rules), frames);
    }

    /** As above, for one picture: what the search for a court rests on. */
    @Benchmark
    @Floor(work = "the middles of all stripes in a picture", operations = 1280 * 720 * 3 * 4.0, bytes = 1280 * 720 * 3)
    public List<RidgePoint> stripes() {
        return RidgeFinder.find(frames.get(0));
    }

    /** A multiplication by the homography, and a look at the map, for each of some 700 points of lines: 20 operations. */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 2, time = 500, timeUnit = TimeUnit.MILLISECONDS)
    @Measurement(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
    @Floor(work = "how well one court explains a picture", operations = 700 * 20, bytes = 700 * 64)
    public double score() {
        return steps.score();
    }

    /** Normal equations of ten parameters over some 700 points: 100 operations each, in at least ten steps. */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 2, time = 500, timeUnit = TimeUnit.MILLISECONDS)
    @Measurement(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
    @Floor(work = "the last fit of a court to its paint", operations = 700 * 100 * 10, bytes = 700 * 64 * 10)
    public LinesFit refine() {
        return steps.refine();
    }

    /** The background of six pictures, its stripes, and the fit of a known court to them. */
    @Benchmark
    @Floor(
            work = "whether a saved court still fits six pictures",
            operations = 6 * 1280 * 720 * 3 * 4.0,
            bytes = 6 * 1280 * 720 * 3)
    public SavedCourt.Check check() {
        return saved.check(frames);
    }

    /** The picture is read and made smaller: an addition a pixel. */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Floor(work = "the court in the next picture", operations = 1280 * 720, bytes = 1280 * 720 * 3)
    public CourtCalibration follow() {
        if (follower.isEmpty()) {
            // In the first warm-up call: the other benchmarks need no film.
            followed();
        }
        return next();
    }

    private void followed() {
        RuleSet fiba = RuleSet.fiba();
        new MovingFilm(fiba, true, 1280, 720, 1 / INTERVAL_SECONDS, PANNED * INTERVAL_SECONDS, FILM_SEED)
                .follow(
                        MovingFilm.panning(fiba.lengthMetres() / 2, FILM_SEED),
                        (index, picture, found) -> panned.add(picture.clone()));
        CourtFollower begun = new CourtFollower(Optional.of(fiba));
        follower = Optional.of(begun);
        if (begun.next(panned.get(0), 0).status() == CalibrationStatus.NONE) {
            throw new IllegalStateException("no court to follow");
        }
        for (int i = 0; i < WARM; i++) {
            next();
        }
    }

    private CourtCalibration next() {
        time += INTERVAL_SECONDS;
        shown = (shown + 1) % (2 * PANNED - 2);
        return follower.orElseThrow().next(panned.get(Math.min(shown, 2 * PANNED - 2 - shown)), time);
    }

    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Floor(work = "whether the camera moves, a picture", operations = 1280 * 720, bytes = 1280 * 720 * 3)
    public CameraWatch.Verdict watch() {
        watch.look(frames.get(0));
        return watch.verdict();
    }
}
