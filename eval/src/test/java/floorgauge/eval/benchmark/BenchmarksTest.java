package floorgauge.eval.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import floorgauge.vision.network.ModelFolder;
import java.util.Collection;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Runs the benchmarks whose names match {@code -Dfloorgauge.benchmark=REGEX}; without it, none. */
class BenchmarksTest {

    private static final String PROPERTY = "floorgauge.benchmark";

    @Test
    void run() throws RunnerException {
        String names = System.getProperty(PROPERTY, "");
        assumeFalse(names.isEmpty(), "-D" + PROPERTY + " is not given; no benchmark is run");
        Options options = new OptionsBuilder()
                .include(names)
                .forks(1)
                .jvmArgsAppend("-D" + ModelFolder.PROPERTY + "="
                        + ModelFolder.standard().path())
                .warmupIterations(2)
                .warmupTime(TimeValue.seconds(2))
                .measurementIterations(4)
                .measurementTime(TimeValue.seconds(2))
                .build();
        Collection<RunResult> results = new Runner(options).run();
        assertThat(results).isNotEmpty();
    }
}
