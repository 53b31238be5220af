package floorgauge.eval.benchmark;

import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Team;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import floorgauge.vision.kit.KitColour;
import floorgauge.vision.tracking.OfflineTracker;
import floorgauge.vision.tracking.Sighting;
import floorgauge.vision.tracking.TrackingSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
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
 * The tracker without its networks: sightings of ten players in, tracks out. The film is a scene of the library played
 * forwards and backwards in turn, so that nobody jumps; one sighting in twenty is missing, and kits waver.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(1)
public class TracksBenchmark {

    private static final double LOOKS_PER_SECOND = 12.5;
    private static final double CONFIDENT = 0.4;
    private static final double MISSED = 0.05;

    /** Length of the film; the time is to grow with it and no faster. */
    @Param({"1", "2", "4"})
    private int minutes;

    private Scene scene;
    private List<List<Sighting>> looks;

    @Setup
    public void play() {
        scene = ScenarioLibrary.load("motion-weak-sound", 300);
        FilmTracks tracks = TrueTracks.sample(scene, LOOKS_PER_SECOND, TrackNoise.GOOD, 1);
        List<FloorFrame> frames = tracks.frames().toList();
        SplittableRandom random = new SplittableRandom(7);
        looks = new ArrayList<>();
        for (int k = 0; k < minutes * 60 * LOOKS_PER_SECOND; k++) {
            int turn = k % (2 * frames.size());
            FloorFrame frame = frames.get(turn < frames.size() ? turn : 2 * frames.size() - 1 - turn);
            List<Sighting> seen = new ArrayList<>();
            for (PlayerSighting player : frame.players()) {
                if (random.nextDouble() >= MISSED) {
                    seen.add(sighting(player, k, random));
                }
            }
            looks.add(seen);
        }
    }

    private static Sighting sighting(PlayerSighting player, int look, SplittableRandom random) {
        PlayerObservation seen = player.observation();
        KitColour.Sampler shirt = new KitColour.Sampler();
        double lightness = player.team() == Team.FIRST ? 85 : 30;
        shirt.add(lightness + 10 * (random.nextDouble() - 0.5), 5, player.team() == Team.FIRST ? 0 : -25);
        return new Sighting(
                new PlayerObservation(
                        look,
                        look / LOOKS_PER_SECOND,
                        seen.foot(),
                        seen.source(),
                        seen.box(),
                        seen.pose(),
                        seen.body(),
                        0.8),
                Optional.of(shirt.kit()),
                OptionalDouble.of(0.5));
    }

    /**
     * Every pair of a sighting and a player is compared once, and each player's state of four figures filtered forwards and
     * backwards: about 750 x (100 x 20 + 10 x 800) operations a minute.
     */
    @Benchmark
    @Floor(
            work = "tracks from sightings of ten players, 750 looks a minute",
            operations = 750 * (100 * 20 + 10 * 800),
            bytes = 750 * 10 * 200,
            scaledBy = "minutes")
    public FilmTracks follow() {
        OfflineTracker tracker = new OfflineTracker(TrackingSettings.defaults(), CONFIDENT, scene.rules());
        for (int k = 0; k < looks.size(); k++) {
            tracker.looked(k, k / LOOKS_PER_SECOND, looks.get(k));
        }
        return tracker.tracks();
    }
}
