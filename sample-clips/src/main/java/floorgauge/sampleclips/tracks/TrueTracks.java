package floorgauge.sampleclips.tracks;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.Body;
import floorgauge.court.track.Facing;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.sampleclips.movement.Gait;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Tracks of a scene at a frame rate. A track's id is the person's until a swap. Without noise every covariance is that of a
 * millimetre, and the source is {@link FootSource#TRUTH}; with noise it is the noise's own, and the source is {@link
 * FootSource#ANKLES}.
 */
public final class TrueTracks {

    /** Team-mates nearer than this may be taken for each other. */
    public static final double SWAP_METRES = 0.9;

    private static final double EXACT_METRES = 0.001;
    private static final double EXACT_RADIANS = 0.001;

    private final Scene scene;
    private final double framesPerSecond;
    private final TrackNoise noise;
    private final long seed;

    private TrueTracks(Scene scene, double framesPerSecond, TrackNoise noise, long seed) {
        if (!(framesPerSecond > 0 && Double.isFinite(framesPerSecond))) {
            throw new IllegalArgumentException("a frame rate is above 0: " + framesPerSecond);
        }
        this.scene = scene;
        this.framesPerSecond = framesPerSecond;
        this.noise = noise;
        this.seed = seed;
    }

    /** The exact motion. */
    public static FilmTracks sample(Scene scene, double framesPerSecond) {
        return sample(scene, framesPerSecond, TrackNoise.NONE, 0);
    }

    /** @param seed of the noise; the same seed gives the same tracks */
    public static FilmTracks sample(Scene scene, double framesPerSecond, TrackNoise noise, long seed) {
        return new TrueTracks(scene, framesPerSecond, noise, seed).tracks();
    }

    private FilmTracks tracks() {
        List<SceneState> states = states();
        SortedMap<Long, Double> times = new TreeMap<>();
        for (int i = 0; i < states.size(); i++) {
            times.put((long) i, states.get(i).timeSeconds());
        }
        List<Map<Integer, Integer>> ids = identities(states);
        SortedMap<Integer, List<PlayerObservation>> observations = new TreeMap<>();
        for (int p = 0; p < scene.people().size(); p++) {
            observe(p, states, ids, observations);
        }
        List<PlayerTrack> tracks = new ArrayList<>();
        observations.forEach((id, list) -> {
            list.sort(java.util.Comparator.comparingLong(PlayerObservation::frame));
            tracks.add(new PlayerTrack(id, person(id).team(), 1, list, List.of()));
        });
        Optional<List<BallObservation>> ball =
                states.get(0).ball().isPresent() ? Optional.of(ball(states, ids)) : Optional.empty();
        return new FilmTracks(times, tracks, ball);
    }

    private Person person(int id) {
        return scene.people().stream().filter(p -> p.id() == id).findFirst().orElseThrow();
    }

    private List<SceneState> states() {
        List<SceneState> states = new ArrayList<>();
        for (int i = 0; i / framesPerSecond <= scene.durationSeconds(); i++) {
            states.add(scene.at(i / framesPerSecond));
        }
        return states;
    }

    /** Track id of each person, frame by frame. */
    private List<Map<Integer, Integer>> identities(List<SceneState> states) {
        Random random = new Random(seed * 31 + 7);
        SortedMap<Integer, Integer> now = new TreeMap<>();
        scene.people().forEach(p -> now.put(p.id(), p.id()));
        List<Map<Integer, Integer>> ids = new ArrayList<>();
        SceneState before = states.get(0);
        for (SceneState state : states) {
            List<PersonState> people = state.people();
            for (int i = 0; i < people.size(); i++) {
                for (int j = i + 1; j < people.size(); j++) {
                    boolean meet = near(state, i, j) && !near(before, i, j);
                    if (meet
                            && sameTeam(people.get(i), people.get(j))
                            && random.nextDouble() < noise.swapProbability()) {
                        int a = people.get(i).person().id();
                        int b = people.get(j).person().id();
                        now.put(a, now.put(b, now.get(a)));
                    }
                }
            }
            ids.add(new TreeMap<>(now));
            before = state;
        }
        return ids;
    }

    private static boolean near(SceneState state, int i, int j) {
        return state.people().get(i).position().distanceTo(state.people().get(j).position()) < SWAP_METRES;
    }

    private static boolean sameTeam(PersonState a, PersonState b) {
        Team team = a.person().team();
        return team == b.person().team() && (team == Team.FIRST || team == Team.SECOND);
    }

    private void observe(
            int p,
            List<SceneState> states,
            List<Map<Integer, Integer>> ids,
            SortedMap<Integer, List<PlayerObservation>> into) {
        int id = scene.people().get(p).id();
        Random random = new Random(seed * 1_000_003L + id);
        boolean[] seen = seen(states.size(), noise.gapsPerMinute(), noise.gapSeconds(), random);
        double step = 1 / framesPerSecond;
        double keep = noise.correlationSeconds() > 0 ? StrictMath.exp(-step / noise.correlationSeconds()) : 0;
        double fresh = Math.sqrt(1 - keep * keep);
        double errorX = random.nextGaussian();
        double errorY = random.nextGaussian();
        for (int i = 0; i < states.size(); i++) {
            errorX = keep * errorX + fresh * random.nextGaussian();
            errorY = keep * errorY + fresh * random.nextGaussian();
            double turn = random.nextGaussian() * noise.facingRadians();
            if (seen[i]) {
                double m = noise.positionMetres();
                into.computeIfAbsent(ids.get(i).get(id), k -> new ArrayList<>())
                        .add(observation(i, states.get(i), p, errorX * m, errorY * m, turn));
            }
        }
    }

    private PlayerObservation observation(int i, SceneState at, int p, double dx, double dy, double turn) {
        PersonState state = at.people().get(p);
        boolean exact = noise.equals(TrackNoise.NONE);
        Feet feet = Feet.of(
                state,
                Gait.strideMetres(state.speedMetresPerSecond(), state.person().heightMetres()));
        double facing = StrictMath.IEEEremainder(state.facingRadians() + turn, 2 * Math.PI);
        Body body = new Body(
                Optional.of(estimate(feet.left(), dx, dy)),
                Optional.of(estimate(feet.right(), dx, dy)),
                Optional.of(new Facing(facing, Math.max(EXACT_RADIANS, noise.facingRadians()))),
                OptionalDouble.of(feet.overShoulders()),
                OptionalDouble.of(feet.planted() ? 1 : 0));
        return new PlayerObservation(
                i,
                at.timeSeconds(),
                estimate(state.position(), dx, dy),
                exact ? FootSource.TRUTH : FootSource.ANKLES,
                Optional.empty(),
                Optional.empty(),
                body,
                1);
    }

    private FloorEstimate estimate(FloorPoint point, double dx, double dy) {
        return new FloorEstimate(
                new FloorPoint(point.xMetres() + dx, point.yMetres() + dy),
                FloorCovariance.isotropic(Math.max(EXACT_METRES, noise.positionMetres())));
    }

    private List<BallObservation> ball(List<SceneState> states, List<Map<Integer, Integer>> ids) {
        Random random = new Random(seed * 1_000_003L);
        boolean[] seen = seen(states.size(), noise.ballGapsPerMinute(), noise.ballGapSeconds(), random);
        List<BallObservation> list = new ArrayList<>();
        for (int i = 0; i < states.size(); i++) {
            double dx = random.nextGaussian() * noise.positionMetres();
            double dy = random.nextGaussian() * noise.positionMetres();
            if (!seen[i]) {
                continue;
            }
            BallState state = states.get(i).ball().orElseThrow();
            OptionalInt holder = state.controlledBy().isPresent()
                    ? OptionalInt.of(ids.get(i).get(state.controlledBy().getAsInt()))
                    : OptionalInt.empty();
            list.add(new BallObservation(
                    i,
                    states.get(i).timeSeconds(),
                    estimate(new FloorPoint(state.xMetres(), state.yMetres()), dx, dy),
                    OptionalDouble.of(state.zMetres()),
                    Optional.empty(),
                    holder,
                    1));
        }
        return list;
    }

    /** Gaps begin at random, at their rate, and last an exponentially distributed time. */
    private boolean[] seen(int frames, double gapsPerMinute, double gapSeconds, Random random) {
        boolean[] seen = new boolean[frames];
        double lostUntil = -1;
        for (int i = 0; i < frames; i++) {
            double time = i / framesPerSecond;
            boolean begins = random.nextDouble() < gapsPerMinute / 60 / framesPerSecond;
            double length = -gapSeconds * StrictMath.log(1 - random.nextDouble());
            if (begins) {
                lostUntil = Math.max(lostUntil, time + length);
            }
            seen[i] = time >= lostUntil;
        }
        return seen;
    }
}
