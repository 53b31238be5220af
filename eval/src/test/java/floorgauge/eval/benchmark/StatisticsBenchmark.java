package floorgauge.eval.benchmark;

import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.eval.statistics.Estimate;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** An interval for one figure over twenty films. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class StatisticsBenchmark {

    private final List<Double> films =
            new SplittableRandom(3).doubles(20).boxed().toList();

    @Benchmark
    @Floor(work = "2000 resamples of 20 films", operations = 2000 * 20 * 3, bytes = 2000 * 20 * 8)
    public Estimate interval() {
        return ClipBootstrap.usual()
                .estimate(films, drawn -> drawn.stream().mapToDouble(d -> d).sum() / drawn.size());
    }
}
