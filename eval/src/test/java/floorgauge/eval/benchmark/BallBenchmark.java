package floorgauge.eval.benchmark;

import floorgauge.vision.network.BallDetector;
import floorgauge.vision.network.BallSighting;
import floorgauge.vision.network.ModelFolder;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** One look for the ball: three pictures of 640 x 384. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class BallBenchmark {

    private BallDetector detector;
    private Mat picture;

    @Setup
    public void load() {
        detector = new BallDetector(ModelFolder.standard(), 0.1);
        Mat large = BenchmarkFilm.picture();
        picture = new Mat();
        Imgproc.resize(large, picture, new Size(640, 384));
        large.release();
    }

    @TearDown
    public void free() {
        picture.release();
        detector.close();
    }

    /** Operations summed over the network's convolutions. */
    @Benchmark
    @Floor(
            work = "the ball in three pictures of 640 x 384",
            operations = 3.3e9,
            bytes = 3 * 640 * 384 * 3,
            network = true)
    public List<BallSighting> detect() {
        return detector.detect(List.of(picture, picture, picture));
    }
}
