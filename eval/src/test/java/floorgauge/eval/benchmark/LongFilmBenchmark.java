package floorgauge.eval.benchmark;

import floorgauge.court.floor.FloorPoint;
import floorgauge.eval.tracking.FloorSimilarity;
import floorgauge.eval.tracking.TrackSequence;
import floorgauge.eval.tracking.TrackingScores;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** All track scores of a long film of ten players, cold: time and memory are to grow with its length and no faster. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
@Fork(value = 1, jvmArgsAppend = "-Xmx2g")
public class LongFilmBenchmark {

    @Param({"30", "60", "120"})
    private int minutes;

    private TrackSequence<FloorPoint> truth;
    private TrackSequence<FloorPoint> result;

    @Setup
    public void generate() {
        GeneratedFilm film = new GeneratedFilm(minutes * 60.0, 1);
        truth = film.truth();
        result = film.result();
    }

    @Benchmark
    @Floor(
            work = "HOTA, CLEAR and identity, 1500 frames a minute",
            operations = 150_000 * 17,
            bytes = 150_000 * 8 * 5,
            scaledBy = "minutes")
    public TrackingScores everyScore() {
        return TrackingScores.of(truth, result, FloorSimilarity.DEFAULT);
    }
}
