package floorgauge.eval.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Microseconds of processor time a call, over all threads of the process, the collector's and the compiler's among them. Where other
 * programs share the processor this says what the work costs, and the clock on the wall does not.
 */
public final class ProcessorTime implements InternalProfiler {

    static final String NAME = "processor";

    private static final double NANOS_PER_MICRO = 1e3;

    private final OperatingSystemMXBean process = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private long before;

    @Override
    public String getDescription() {
        return "processor time a call";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        before = process.getProcessCpuTime();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        long used = process.getProcessCpuTime() - before;
        double each = used / NANOS_PER_MICRO / result.getMetadata().getAllOps();
        return List.of(new ScalarResult(NAME, each, "us/op", AggregationPolicy.AVG));
    }
}
