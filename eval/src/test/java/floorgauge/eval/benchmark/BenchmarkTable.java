package floorgauge.eval.benchmark;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs every benchmark of this package and prints a table. Times are microseconds a call, on the wall's clock and of the processor. The floor of
 * a call is the longer of its operations at the rate of {@link MachineBenchmark#arithmetic}, for networks of {@link
 * MatrixBenchmark#product}, and its bytes at that of {@link MachineBenchmark#memory}, all in processor time, measured in the same
 * run on the same machine.
 */
public final class BenchmarkTable {

    private BenchmarkTable() {}

    /** @param arguments patterns of the benchmarks to run; none for all */
    public static void main(String[] arguments) throws RunnerException {
        ChainedOptionsBuilder options = new OptionsBuilder()
                .forks(1)
                .warmupIterations(2)
                .warmupTime(TimeValue.milliseconds(500))
                .measurementIterations(3)
                .measurementTime(TimeValue.milliseconds(500))
                .timeUnit(TimeUnit.MICROSECONDS)
                .addProfiler(ProcessorTime.class)
                .verbosity(VerboseMode.SILENT);
        String own = BenchmarkTable.class.getPackageName().replace(".", "\\.") + "\\.";
        options.include(own + "MachineBenchmark").include(own + "MatrixBenchmark");
        if (arguments.length == 0) {
            options.include(own);
        }
        for (String pattern : arguments) {
            options.include(own + ".*" + pattern);
        }
        print(new Runner(options.build()).run());
    }

    private static void print(Collection<RunResult> results) {
        double microsPerOperation = score(results, "arithmetic") / MachineBenchmark.OPERATIONS;
        double microsPerNetworkOperation = score(results, "product") / MatrixBenchmark.OPERATIONS;
        double microsPerByte = score(results, "memory") / MachineBenchmark.BYTES;
        System.out.printf(
                Locale.ROOT,
                "A second of this processor's time: %.1f G operations, %.1f GB; %.0f G in a product of matrices.%n%n",
                1e-3 / microsPerOperation,
                1e-3 / microsPerByte,
                1e-3 / microsPerNetworkOperation);
        System.out.println("| benchmark | work | µs a call | processor, µs | floor, µs | times the floor |");
        System.out.println("| --- | --- | --: | --: | --: | --: |");
        for (RunResult result : results) {
            floor(result.getParams()).ifPresent(floor -> {
                double each = floor.network() ? microsPerNetworkOperation : microsPerOperation;
                double least = times(floor, result.getParams())
                        * Math.max(floor.operations() * each, floor.bytes() * microsPerByte);
                double processor = processor(result);
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %s | %.3g | %.3g | %.3g | %.1f |%n",
                        name(result.getParams()),
                        floor.work(),
                        result.getPrimaryResult().getScore(),
                        processor,
                        least,
                        processor / least);
            });
        }
    }

    private static double times(Floor floor, BenchmarkParams params) {
        return floor.scaledBy().isEmpty()
                ? 1
                : Math.pow(Double.parseDouble(params.getParam(floor.scaledBy())), floor.power());
    }

    private static double score(Collection<RunResult> results, String method) {
        return results.stream()
                .filter(r -> r.getParams().getBenchmark().endsWith("." + method))
                .mapToDouble(BenchmarkTable::processor)
                .findFirst()
                .orElseThrow();
    }

    private static double processor(RunResult result) {
        return result.getSecondaryResults().get(ProcessorTime.NAME).getScore();
    }

    private static String name(BenchmarkParams params) {
        String[] parts = params.getBenchmark().split("\\.");
        String name = parts[parts.length - 2].replace("Benchmark", "") + "." + parts[parts.length - 1];
        for (String key : params.getParamsKeys()) {
            name += ", " + key + " " + params.getParam(key);
        }
        return name;
    }

    private static Optional<Floor> floor(BenchmarkParams params) {
        String benchmark = params.getBenchmark();
        int dot = benchmark.lastIndexOf('.');
        try {
            Class<?> type = Class.forName(benchmark.substring(0, dot));
            return Arrays.stream(type.getMethods())
                    .filter(m -> m.getName().equals(benchmark.substring(dot + 1)))
                    .map(BenchmarkTable::floor)
                    .findFirst()
                    .flatMap(f -> f);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException("a benchmark's class is on the class path", e);
        }
    }

    private static Optional<Floor> floor(Method method) {
        return Optional.ofNullable(method.getAnnotation(Floor.class));
    }
}
