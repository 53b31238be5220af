package floorgauge.eval.benchmark;

import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Pose;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.network.PoseEstimator;
import floorgauge.vision.network.PoseQuality;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.opencv.core.Mat;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** A person through the pose network: ten at once, and the slow way beside it, one after the other. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class PoseBenchmark {

    private static final int PEOPLE = 10;

    @Param
    public PoseQuality quality;

    private PoseEstimator estimator;
    private Mat picture;
    private final List<ImageBox> people = new ArrayList<>();

    @Setup
    public void load() {
        estimator = new PoseEstimator(ModelFolder.standard(), quality);
        picture = BenchmarkFilm.picture();
        for (int i = 0; i < PEOPLE; i++) {
            people.add(new ImageBox(100 * i + 0.3, 200 + 37 * i, 40, 120));
        }
    }

    @TearDown
    public void free() {
        estimator.close();
    }

    /** Operations of the fast network, counted by PyTorch's profiler; the fine one needs 4.5 times as many. */
    @Benchmark
    @Floor(work = "a person of ten; floor of the fast one", operations = 0.54e9, bytes = 192 * 192 * 3, network = true)
    @OperationsPerInvocation(PEOPLE)
    public List<Pose> together() {
        return estimator.estimate(picture, people);
    }

    @Benchmark
    @Floor(work = "a person alone; floor of the fast one", operations = 0.54e9, bytes = 192 * 192 * 3, network = true)
    @OperationsPerInvocation(PEOPLE)
    public List<Pose> oneByOne() {
        List<Pose> poses = new ArrayList<>();
        for (ImageBox person : people) {
            poses.addAll(estimator.estimate(picture, List.of(person)));
        }
        return poses;
    }
}
