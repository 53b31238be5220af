package floorgauge.app.season;

import floorgauge.app.store.Player;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.Appearance;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.Body;
import floorgauge.court.track.Facing;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The tracks of a whole practice: one scene after another with a break between, seen with the errors of a good tracker.
 * Every player keeps one track through the film. Safe for use by several threads.
 */
final class PracticeTracks {

    private static final double FRAMES_PER_SECOND = 25;

    /** Longer than what ends a possession. */
    private static final long BREAK_FRAMES = 100;

    private static final long SCENE_SEED = 7;

    private static final double READ_PROBABILITY = 0.86;
    private static final int LIGHT_SHIRT = 0xE8E4D8;
    private static final int DARK_SHIRT = 0x2B3547;

    private final Map<String, PlayedScene> scenes = new ConcurrentHashMap<>();

    /** The tracks of a practice. */
    FilmTracks of(Repetition.Practice practice) {
        Film film = new Film();
        for (Repetition repetition : practice.repetitions()) {
            PlayedScene scene =
                    scenes.computeIfAbsent(repetition.scene(), name -> ScenarioLibrary.load(name, SCENE_SEED));
            film.add(repetition, scene);
        }
        return film.tracks();
    }

    /** A film as it grows. */
    private static final class Film {

        private final SortedMap<Long, Double> times = new TreeMap<>();
        private final SortedMap<Integer, List<PlayerObservation>> players = new TreeMap<>();
        private final List<BallObservation> ball = new ArrayList<>();
        private long start = BREAK_FRAMES / 4;

        void add(Repetition repetition, PlayedScene scene) {
            FilmTracks seen = TrueTracks.sample(scene, FRAMES_PER_SECOND, TrackNoise.GOOD, repetition.seed());
            Map<Integer, Integer> ids = ids(repetition, scene);
            for (PlayerTrack track : seen.players()) {
                for (PlayerObservation observation : track.observations()) {
                    players.computeIfAbsent(ids.get(track.id()), i -> new ArrayList<>())
                            .add(moved(observation, repetition.mirrored()));
                }
            }
            seen.ball().orElse(List.of()).forEach(b -> ball.add(moved(b, repetition.mirrored(), ids)));
            start += seen.frameTimesSeconds().lastKey() + 1 + BREAK_FRAMES;
        }

        FilmTracks tracks() {
            for (long frame = 0; frame < start - BREAK_FRAMES / 2; frame++) {
                times.put(frame, seconds(frame));
            }
            List<PlayerTrack> tracks = new ArrayList<>();
            players.forEach((id, seen) -> {
                Player player = Club.players().get(id - 1);
                boolean light = player.squad().equals(Club.LIGHT);
                JerseyReading number = new JerseyReading(player.number().orElseThrow(), READ_PROBABILITY);
                tracks.add(new PlayerTrack(
                        id,
                        light ? Team.FIRST : Team.SECOND,
                        0.97,
                        seen,
                        List.of(),
                        new Appearance(Optional.of(number), OptionalInt.of(light ? LIGHT_SHIRT : DARK_SHIRT))));
            });
            return new FilmTracks(times, tracks, Optional.of(ball));
        }

        private static Map<Integer, Integer> ids(Repetition repetition, PlayedScene scene) {
            List<Player> attack = Club.five(repetition.lightAttacks(), repetition.secondCentre());
            List<Player> defence = Club.five(!repetition.lightAttacks(), repetition.secondCentre());
            Map<Integer, Integer> ids = new TreeMap<>();
            for (int place = 0; place < scene.attackers().size(); place++) {
                ids.put(scene.attackers().get(place), Club.track(attack.get(place)));
                ids.put(scene.defenders().get(place), Club.track(defence.get(place)));
            }
            return ids;
        }

        private static double seconds(long frame) {
            return frame / FRAMES_PER_SECOND;
        }

        private PlayerObservation moved(PlayerObservation seen, boolean mirrored) {
            long frame = start + seen.frame();
            return new PlayerObservation(
                    frame,
                    seconds(frame),
                    mirrored(seen.foot(), mirrored),
                    seen.source(),
                    seen.box(),
                    seen.pose(),
                    mirrored(seen.body(), mirrored),
                    seen.score());
        }

        private BallObservation moved(BallObservation seen, boolean mirrored, Map<Integer, Integer> ids) {
            long frame = start + seen.frame();
            OptionalInt holder = seen.heldBy().isPresent()
                    ? OptionalInt.of(ids.get(seen.heldBy().getAsInt()))
                    : OptionalInt.empty();
            return new BallObservation(
                    frame,
                    seconds(frame),
                    mirrored(seen.floor(), mirrored),
                    seen.heightMetres(),
                    seen.position(),
                    holder,
                    seen.probability());
        }

        private static Body mirrored(Body body, boolean mirrored) {
            return mirrored
                    ? new Body(
                            body.rightAnkle().map(a -> mirrored(a, true)),
                            body.leftAnkle().map(a -> mirrored(a, true)),
                            body.facing().map(f -> new Facing(-f.radians(), f.standardErrorRadians())),
                            body.stanceOverShoulders(),
                            body.plantedProbability())
                    : body;
        }

        private static FloorEstimate mirrored(FloorEstimate place, boolean mirrored) {
            FloorCovariance c = place.covariance();
            return mirrored
                    ? new FloorEstimate(
                            new FloorPoint(place.mean().xMetres(), -place.mean().yMetres()),
                            new FloorCovariance(c.xx(), -c.xy(), c.yy()))
                    : place;
        }
    }
}
