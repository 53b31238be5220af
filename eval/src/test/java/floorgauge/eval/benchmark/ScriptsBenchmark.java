package floorgauge.eval.benchmark;

import floorgauge.court.track.FilmTracks;
import floorgauge.events.Measurement;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.ScriptReading;
import floorgauge.events.script.ScriptReader;
import floorgauge.events.script.ShippedScripts;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** A possession of ten players held against every script that ships. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class ScriptsBenchmark {

    /** A set that one of the scripts describes, and a play that none does. */
    @Param({"horns-stagger-sound", "isolation-sound"})
    private String scene;

    private PossessionFindings possession;
    private ScriptReader reader;

    @Setup
    public void measure() {
        Scene played = ScenarioLibrary.load(scene, 1);
        FilmTracks tracks = TrueTracks.sample(played, 25, TrackNoise.GOOD, 1);
        possession = Measurement.measure(tracks, played.rules(), Standards.defaults())
                .possessions()
                .get(0);
        reader = new ScriptReader(ShippedScripts.all(ScriptsBenchmark::text), played.rules(), Standards.defaults());
    }

    private static String text(String resource) {
        try (InputStream in = ShippedScripts.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * For one assignment of roles, each of eleven scripts' steps (about 6) against each act (about 10), on both sides of the
     * floor, some 20 operations a pair; reading the acts goes once over the ten trails.
     */
    @Benchmark
    @Floor(
            work = "a possession against eleven scripts",
            operations = 11 * 2 * 6 * 10 * 20 + 10 * 300 * 10,
            bytes = 10 * 300 * 40)
    public Optional<ScriptReading> read() {
        return reader.read(possession, (tracks, from, to) -> 1);
    }
}
