package floorgauge.eval.benchmark;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.rules.RuleSet;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** A foot onto the floor with its covariance, and back. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class CourtBenchmark {

    /** A camera that looks down at an angle: rows toward the top lie farther off. */
    private final CourtCalibration calibration = CourtCalibration.known(
            RuleSet.fiba(), new double[] {0.02, 0, -12.8, 0, -0.05, 25, 0, 0.002, 0.6}, 1280, 720);

    private final PixelPoint foot = new PixelPoint(700, 500);
    private final FloorPoint point = new FloorPoint(1, 1);

    @Benchmark
    @Floor(work = "one foot to the floor with covariance", operations = 15 + 60, bytes = 9 * 8 + 2 * 8 + 5 * 8)
    public FloorEstimate floorAt() {
        return calibration.floorAt(foot, 2, 3);
    }

    @Benchmark
    @Floor(work = "one floor point to the picture", operations = 15, bytes = 9 * 8 + 4 * 8)
    public PixelPoint pixelAt() {
        return calibration.pixelAt(point);
    }
}
