package floorgauge.eval.benchmark;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** What the machine can do at all: the yardstick for every floor. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class MachineBenchmark {

    static final int OPERATIONS = 1 << 20;
    static final int BYTES = 1 << 26;

    private final double[] small = new double[2048];
    private final long[] large = new long[BYTES / Long.BYTES];

    /** Multiply-adds on an array that stays in the first cache. */
    @Benchmark
    public double arithmetic() {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        for (int round = 0; round < OPERATIONS / 2 / small.length; round++) {
            for (int i = 0; i < small.length; i += 4) {
                a += small[i] * 1.000001;
                b += small[i + 1] * 1.000001;
                c += small[i + 2] * 1.000001;
                d += small[i + 3] * 1.000001;
            }
        }
        return a + b + c + d;
    }

    /** Reading memory that no cache holds. */
    @Benchmark
    public long memory() {
        long sum = 0;
        for (long value : large) {
            sum += value;
        }
        return sum;
    }
}
