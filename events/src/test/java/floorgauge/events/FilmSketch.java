package floorgauge.events;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;

/** Draws a scene by hand: players on timed way points, seen at any frame rate with any noise. */
final class FilmSketch {

    /** Where a player is to be at a time; in between he eases from one to the next (least jerk). */
    record Way(double time, double x, double y) {}

    private record Drawn(int id, Team team, List<Way> ways, List<IdentityDoubt> doubts) {}

    private final double seconds;
    private final List<Drawn> players = new ArrayList<>();
    private Optional<List<Way>> ball = Optional.empty();
    private DoubleUnaryOperator ballHeight = t -> 1;
    private java.util.function.DoubleFunction<OptionalInt> heldBy = t -> OptionalInt.empty();

    FilmSketch(double seconds) {
        this.seconds = seconds;
    }

    FilmSketch player(int id, Team team, double... timeXY) {
        return player(id, team, List.of(), timeXY);
    }

    FilmSketch player(int id, Team team, List<IdentityDoubt> doubts, double... timeXY) {
        players.add(new Drawn(id, team, ways(timeXY), doubts));
        return this;
    }

    FilmSketch ball(double... timeXY) {
        ball = Optional.of(ways(timeXY));
        return this;
    }

    FilmSketch ballHeight(DoubleUnaryOperator height) {
        ballHeight = height;
        return this;
    }

    FilmSketch heldBy(java.util.function.DoubleFunction<OptionalInt> holder) {
        heldBy = holder;
        return this;
    }

    private static List<Way> ways(double... timeXY) {
        List<Way> ways = new ArrayList<>();
        for (int i = 0; i < timeXY.length; i += 3) {
            ways.add(new Way(timeXY[i], timeXY[i + 1], timeXY[i + 2]));
        }
        return ways;
    }

    FilmTracks exact(double framesPerSecond) {
        return seen(framesPerSecond, 0, 0);
    }

    /** @param noise standard deviation of each position, metres; 0 for the truth */
    FilmTracks seen(double framesPerSecond, double noise, long seed) {
        Random random = new Random(seed);
        TreeMap<Long, Double> times = new TreeMap<>();
        for (long frame = 0; frame / framesPerSecond <= seconds + 1e-9; frame++) {
            times.put(frame, frame / framesPerSecond);
        }
        List<PlayerTrack> tracks = new ArrayList<>();
        for (Drawn drawn : players) {
            List<PlayerObservation> observations = new ArrayList<>();
            for (Map.Entry<Long, Double> frame : times.entrySet()) {
                observations.add(observation(frame, estimate(drawn.ways, frame.getValue(), noise, random)));
            }
            tracks.add(new PlayerTrack(drawn.id, drawn.team, 1, observations, drawn.doubts));
        }
        return new FilmTracks(times, tracks, ball.map(ways -> ball(ways, times, noise, random)));
    }

    private List<BallObservation> ball(List<Way> ways, TreeMap<Long, Double> times, double noise, Random random) {
        List<BallObservation> seen = new ArrayList<>();
        for (Map.Entry<Long, Double> frame : times.entrySet()) {
            double t = frame.getValue();
            seen.add(new BallObservation(
                    frame.getKey(),
                    t,
                    straight(ways, t, noise, random),
                    OptionalDouble.of(ballHeight.applyAsDouble(t)),
                    Optional.empty(),
                    heldBy.apply(t),
                    1));
        }
        return seen;
    }

    private static PlayerObservation observation(Map.Entry<Long, Double> frame, FloorEstimate estimate) {
        return new PlayerObservation(
                frame.getKey(),
                frame.getValue(),
                estimate,
                FootSource.ANKLES,
                Optional.empty(),
                Optional.empty(),
                Body.UNSEEN,
                1);
    }

    private static FloorEstimate estimate(List<Way> ways, double t, double noise, Random random) {
        return at(ways, t, noise, random, true);
    }

    private static FloorEstimate straight(List<Way> ways, double t, double noise, Random random) {
        return at(ways, t, noise, random, false);
    }

    private static FloorEstimate at(List<Way> ways, double t, double noise, Random random, boolean eased) {
        Way before = ways.get(0);
        Way after = before;
        for (Way way : ways) {
            after = way;
            if (way.time > t) {
                break;
            }
            before = way;
        }
        double span = after.time - before.time;
        double share = span > 0 ? Math.max(0, Math.min(1, (t - before.time) / span)) : 0;
        double s = eased ? share * share * share * (10 - 15 * share + 6 * share * share) : share;
        return new FloorEstimate(
                new FloorPoint(
                        before.x + s * (after.x - before.x) + noise * random.nextGaussian(),
                        before.y + s * (after.y - before.y) + noise * random.nextGaussian()),
                FloorCovariance.isotropic(Math.max(noise, 0.003)));
    }
}
