package floorgauge.eval.benchmark;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerSighting;
import floorgauge.events.MeasurementStream;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

/**
 * A practice of ten players at 25 frames a second through all of events, cold: time is to grow with its length and no faster,
 * memory not at all. The practice repeats a few scenes of the library, seen with a good tracker's errors.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
@Fork(value = 1, jvmArgsAppend = "-Xmx512m")
public class PracticeBenchmark {

    private static final double FRAMES_PER_SECOND = 25;
    private static final List<String> SCENES = List.of("pin-down-sound", "high-ball-screen-sound", "flex-cross-sound");

    @Param({"30", "60", "120"})
    private int minutes;

    private List<FloorFrame> cycle;

    @Setup
    public void play() {
        cycle = new ArrayList<>();
        for (String name : SCENES) {
            FilmTracks tracks =
                    TrueTracks.sample(ScenarioLibrary.load(name, 300), FRAMES_PER_SECOND, TrackNoise.GOOD, 1);
            double offset = cycle.size() / FRAMES_PER_SECOND;
            tracks.frames().forEach(f -> cycle.add(later(f, cycle.size(), offset)));
        }
    }

    /** A filter and a smoother over six states a player and tick, and every pair of players: about 40 x 10 x 500 operations. */
    @Benchmark
    @Floor(
            work = "all of events on a practice, 1500 frames a minute",
            operations = 1500 * 10 * 2_000,
            bytes = 1500 * 10 * 200,
            scaledBy = "minutes")
    public int practice() {
        int[] possessions = new int[1];
        MeasurementStream stream = new MeasurementStream(RuleSet.fiba(), Standards.defaults(), p -> possessions[0]++);
        long frames = Math.round(minutes * 60 * FRAMES_PER_SECOND);
        for (long k = 0; k < frames; k++) {
            long turn = k / cycle.size();
            FloorFrame frame = cycle.get((int) (k % cycle.size()));
            stream.accept(later(frame, k, turn * cycle.size() / FRAMES_PER_SECOND));
        }
        stream.finish();
        return possessions[0];
    }

    private static FloorFrame later(FloorFrame frame, long number, double offset) {
        double time = frame.timeSeconds() + offset;
        return new FloorFrame(
                number,
                time,
                frame.players().stream()
                        .map(p -> new PlayerSighting(
                                p.trackId(), p.team(), p.teamProbability(), later(p.observation(), number, offset)))
                        .toList(),
                frame.ball()
                        .map(b -> new BallObservation(
                                number,
                                b.timeSeconds() + offset,
                                b.floor(),
                                b.heightMetres(),
                                b.position(),
                                b.heldBy(),
                                b.probability())));
    }

    private static PlayerObservation later(PlayerObservation seen, long number, double offset) {
        return new PlayerObservation(
                number,
                seen.timeSeconds() + offset,
                seen.foot(),
                seen.source(),
                seen.box(),
                seen.pose(),
                seen.body(),
                seen.score());
    }

    /**
     * Prints processor time and heap for practices of given lengths, without JMH, and plots them.
     *
     * @param arguments the plot's file, then minutes in rising order
     */
    public static void main(String[] arguments) throws IOException {
        PracticeBenchmark benchmark = new PracticeBenchmark();
        benchmark.play();
        List<LengthPlot.Run> runs = new ArrayList<>();
        for (String minutes : List.of(arguments).subList(1, arguments.length)) {
            benchmark.minutes = Integer.parseInt(minutes);
            long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            int possessions = benchmark.practice();
            double seconds = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9;
            System.gc();
            long heap = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
            System.out.printf(
                    Locale.ROOT,
                    "%s min: %.1f s of one core, %d possessions, %.1f MB of heap left in use%n",
                    minutes,
                    seconds,
                    possessions,
                    heap / 1e6);
            runs.add(new LengthPlot.Run(benchmark.minutes / 60.0, seconds, heap / 1e6));
        }
        Files.writeString(Path.of(arguments[0]), new LengthPlot(runs).svg());
    }
}
