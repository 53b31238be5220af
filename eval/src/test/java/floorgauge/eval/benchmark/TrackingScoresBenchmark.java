package floorgauge.eval.benchmark;

import floorgauge.court.floor.FloorPoint;
import floorgauge.eval.assignment.LinearAssignment;
import floorgauge.eval.tracking.ClearMatching;
import floorgauge.eval.tracking.EventLog;
import floorgauge.eval.tracking.FloorSimilarity;
import floorgauge.eval.tracking.HotaMatching;
import floorgauge.eval.tracking.IdentityMatching;
import floorgauge.eval.tracking.SimilarityTable;
import floorgauge.eval.tracking.TrackSequence;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Matching and similarity of one minute of ten players: 1500 frames, 150,000 pairs. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class TrackingScoresBenchmark {

    private TrackSequence<FloorPoint> truth;
    private TrackSequence<FloorPoint> result;
    private SimilarityTable table;
    private double[] costs;

    @Setup
    public void generate() {
        GeneratedFilm film = new GeneratedFilm(60, 1);
        truth = film.truth();
        result = film.result();
        table = SimilarityTable.of(truth, result, FloorSimilarity.DEFAULT);
        costs = new SplittableRandom(2).doubles(100).toArray();
    }

    @Benchmark
    @Floor(work = "similarities of a minute, 150,000 distances", operations = 150_000 * 7, bytes = 150_000 * 8)
    public SimilarityTable similarities() {
        return SimilarityTable.of(truth, result, FloorSimilarity.DEFAULT);
    }

    @Benchmark
    @Floor(work = "CLEAR matching of a minute", operations = 150_000 * 2, bytes = 150_000 * 8)
    public EventLog clearMatching() {
        return ClearMatching.usual().match(table);
    }

    @Benchmark
    @Floor(work = "HOTA matching of a minute", operations = 150_000 * 6, bytes = 2 * 150_000 * 8)
    public EventLog hotaMatching() {
        return new HotaMatching().match(table);
    }

    @Benchmark
    @Floor(work = "identity matching of a minute", operations = 150_000 * 2, bytes = 2 * 150_000 * 8)
    public EventLog identityMatching() {
        return IdentityMatching.usual().match(table);
    }

    @Benchmark
    @Floor(work = "assignment of 10 to 10", operations = 10 * 10 * 2, bytes = 100 * 8)
    public int[] assignment() {
        return LinearAssignment.minimise(costs, 10, 10);
    }
}
