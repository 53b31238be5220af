package floorgauge.eval.benchmark;

import ai.djl.ndarray.NDArray;
import ai.djl.ndarray.NDManager;
import ai.djl.ndarray.types.Shape;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** The yardstick for networks: a large product of matrices in the library that runs them, single precision, its own threads. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class MatrixBenchmark {

    private static final int SIDE = 768;

    /** A multiplication and an addition for each of the cube. */
    static final double OPERATIONS = 2.0 * SIDE * SIDE * SIDE;

    private NDManager manager;
    private NDArray left;
    private NDArray right;

    @Setup
    public void fill() {
        manager = NDManager.newBaseManager();
        left = manager.ones(new Shape(SIDE, SIDE));
        right = manager.ones(new Shape(SIDE, SIDE));
    }

    @TearDown
    public void free() {
        manager.close();
    }

    @Benchmark
    public float product() {
        try (NDArray product = left.matMul(right)) {
            return product.getFloat(0, 0);
        }
    }
}
