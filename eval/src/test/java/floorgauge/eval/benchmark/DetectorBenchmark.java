package floorgauge.eval.benchmark;

import floorgauge.vision.network.Detection;
import floorgauge.vision.network.PersonDetector;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.opencv.core.Mat;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** Pictures of 1280 x 720 through the person detector. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class DetectorBenchmark {

    /** Network pixels for one picture pixel. */
    @Param({"0.5", "1"})
    public double scale;

    private PersonDetector detector;
    private Mat picture;

    @Setup
    public void load() {
        detector = new PersonDetector();
        picture = BenchmarkFilm.picture();
    }

    @TearDown
    public void free() {
        detector.close();
    }

    /** Operations counted by PyTorch's profiler at an input of 1280 x 736. */
    @Benchmark
    @Floor(
            work = "people in a picture of 1280 x 720",
            operations = 8.22e9,
            bytes = 1280 * 736 * 3,
            network = true,
            scaledBy = "scale",
            power = 2)
    public List<Detection> detect() {
        return detector.detect(picture, scale);
    }
}
