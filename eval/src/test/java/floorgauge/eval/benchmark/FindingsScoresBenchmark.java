package floorgauge.eval.benchmark;

import floorgauge.eval.events.EvenGuesses;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMatches;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.scene.SceneEvents;
import floorgauge.eval.score.EventTable;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Findings against labels: a scene matched, and ten scenes' table with intervals. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class FindingsScoresBenchmark {

    private static final int SCENES = 10;

    private List<EventFilm> films;

    @Setup
    public void measure() {
        List<String> names = ScenarioLibrary.list().subList(0, SCENES);
        films = SceneEvents.measured(
                SceneEvents.played(names, new long[] {1}, new ArrayList<>()),
                TrackNoise.GOOD,
                Standards.defaults(),
                new ArrayList<>());
    }

    /** About 15 labels and 15 findings, each pair of one kind compared in time and roles. */
    @Benchmark
    @Floor(work = "findings of a scene matched with its labels", operations = 15 * 15 * 4, bytes = 30 * 64)
    public EventMatches match() {
        return films.get(0).match(EventTolerance.USUAL);
    }

    /** 21 kinds with two intervals each, 2000 resamples of ten films, three sums. */
    @Benchmark
    @Floor(
            work = "the table of ten scenes with its intervals",
            operations = 21 * 2 * 2000 * SCENES * 3.0,
            bytes = 21 * 2 * 2000 * SCENES * 8.0)
    public List<String> table() {
        return EventTable.of(films, EvenGuesses.of(films), EventTolerance.USUAL, ClipBootstrap.usual());
    }
}
