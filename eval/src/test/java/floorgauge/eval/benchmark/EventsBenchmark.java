package floorgauge.eval.benchmark;

import floorgauge.court.track.FilmTracks;
import floorgauge.events.Measurement;
import floorgauge.events.finding.Findings;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Tracks to findings: one scene of the library with a good tracker's errors. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class EventsBenchmark {

    private FilmTracks tracks;
    private Scene scene;

    @Setup
    public void sample() {
        scene = ScenarioLibrary.load(ScenarioLibrary.list().get(0), 1);
        tracks = TrueTracks.sample(scene, 25, TrackNoise.GOOD, 1);
    }

    /** A filter and a smoother over four states and two axes a player and tick: about 2 x 400 operations. */
    @Benchmark
    @Floor(work = "a scene of 10 to 15 s, ten players", operations = 10 * 300 * 800, bytes = 10 * 300 * 200)
    public Findings measure() {
        return Measurement.measure(tracks, scene.rules(), Standards.defaults());
    }
}
