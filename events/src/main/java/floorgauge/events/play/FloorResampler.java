package floorgauge.events.play;

import floorgauge.court.track.BallObservation;
import floorgauge.court.track.Body;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Team;
import floorgauge.events.motion.MotionPrior;
import floorgauge.events.motion.MotionSample;
import floorgauge.events.motion.MotionSmoother;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/** Turns frames as they come into ticks of the uniform clock, some seconds late. Not safe for use by several threads. */
final class FloorResampler {

    private static final double BODY_REACH_SECONDS = 0.1;
    private static final double FORGET_SECONDS = 20;

    private final Consumer<FloorTick> out;
    private final MotionPrior prior;
    private final TreeMap<Integer, TrackState> tracks = new TreeMap<>();
    private final TreeMap<Long, List<PlayerTick>> players = new TreeMap<>();
    private final TreeMap<Long, MotionSample> ballMotion = new TreeMap<>();
    private final TreeMap<Double, BallObservation> ballSeen = new TreeMap<>();
    private final MotionSmoother ballSmoother;
    private long nextTick = Long.MIN_VALUE;
    private double lastSeconds = Double.NEGATIVE_INFINITY;

    FloorResampler(Standards standards, Consumer<FloorTick> out) {
        this.out = out;
        this.prior = MotionPrior.player(standards);
        this.ballSmoother = new MotionSmoother(MotionPrior.ball(standards), s -> ballMotion.put(s.tick(), s));
    }

    void accept(FloorFrame frame) {
        double now = frame.timeSeconds();
        if (!Double.isFinite(now)) {
            throw new IllegalArgumentException("frame " + frame.frame() + " has no finite time");
        }
        if (now <= lastSeconds) {
            throw new IllegalArgumentException(
                    "time runs backwards at frame " + frame.frame() + ": " + now + " s after " + lastSeconds + " s");
        }
        if (nextTick == Long.MIN_VALUE) {
            nextTick = UniformClock.atOrAfter(now);
        }
        lastSeconds = now;
        frame.players().forEach(this::acceptPlayer);
        frame.ball().ifPresent(this::acceptBall);
        tracks.values().forEach(t -> t.smoother.pass(now));
        tracks.values().removeIf(t -> now - t.lastSeconds > FORGET_SECONDS);
        giveOutBefore(UniformClock.atOrAfter(now - MotionSmoother.latenessSeconds(prior) - 1));
    }

    void finish() {
        tracks.values().forEach(t -> t.smoother.finish());
        ballSmoother.finish();
        if (nextTick != Long.MIN_VALUE) {
            giveOutBefore(UniformClock.atOrAfter(lastSeconds + 1e-9) + (isTick(lastSeconds) ? 1 : 0));
        }
    }

    private static boolean isTick(double seconds) {
        return Math.abs(UniformClock.seconds(UniformClock.nearest(seconds)) - seconds) < 1e-7;
    }

    private void acceptPlayer(PlayerSighting sighting) {
        TrackState track = tracks.computeIfAbsent(sighting.trackId(), TrackState::new);
        double time = sighting.observation().timeSeconds();
        track.team = sighting.team();
        track.teamProbability = sighting.teamProbability();
        track.lastSeconds = time;
        if (sighting.observation().source() != FootSource.PREDICTED) {
            track.bodies.put(time, sighting.observation().body());
            track.smoother.observe(time, sighting.observation().foot());
        }
    }

    private void acceptBall(BallObservation ball) {
        ballSeen.put(ball.timeSeconds(), ball);
        ballSmoother.observe(ball.timeSeconds(), ball.floor());
    }

    private void giveOutBefore(long end) {
        while (nextTick < end) {
            List<PlayerTick> here = players.remove(nextTick);
            if (here == null) {
                here = new ArrayList<>();
            }
            here.sort(Comparator.comparingInt(PlayerTick::trackId));
            out.accept(new FloorTick(nextTick, List.copyOf(here), ballAt(nextTick)));
            nextTick++;
        }
    }

    private Optional<BallTick> ballAt(long tick) {
        double time = UniformClock.seconds(tick);
        MotionSample motion = ballMotion.remove(tick);
        ballSeen.headMap(time - 2).clear();
        if (motion == null) {
            return Optional.empty();
        }
        Map.Entry<Double, BallObservation> before = ballSeen.floorEntry(time + 1e-9);
        Map.Entry<Double, BallObservation> after = ballSeen.ceilingEntry(time - 1e-9);
        BallObservation nearest = nearest(before, after, time);
        return Optional.of(new BallTick(
                motion,
                height(before, after, time),
                nearest == null ? 0 : nearest.heldBy().orElse(0)));
    }

    private static BallObservation nearest(
            Map.Entry<Double, BallObservation> before, Map.Entry<Double, BallObservation> after, double time) {
        if (before == null || after == null) {
            return before != null ? before.getValue() : after != null ? after.getValue() : null;
        }
        return time - before.getKey() <= after.getKey() - time ? before.getValue() : after.getValue();
    }

    private static double height(
            Map.Entry<Double, BallObservation> before, Map.Entry<Double, BallObservation> after, double time) {
        if (before == null || after == null) {
            BallObservation one = nearest(before, after, time);
            return one == null ? Double.NaN : one.heightMetres().orElse(Double.NaN);
        }
        double a = before.getValue().heightMetres().orElse(Double.NaN);
        double b = after.getValue().heightMetres().orElse(Double.NaN);
        double span = after.getKey() - before.getKey();
        double share = span > 0 ? (time - before.getKey()) / span : 0;
        return a + share * (b - a);
    }

    private final class TrackState {
        private final MotionSmoother smoother;
        private final TreeMap<Double, Body> bodies = new TreeMap<>();
        private final int id;
        private Team team = Team.UNKNOWN;
        private double teamProbability;
        private double lastSeconds;

        private TrackState(int id) {
            this.id = id;
            this.smoother = new MotionSmoother(prior, this::sample);
        }

        private void sample(MotionSample motion) {
            double time = UniformClock.seconds(motion.tick());
            bodies.headMap(time - 1).clear();
            players.computeIfAbsent(motion.tick(), t -> new ArrayList<>())
                    .add(new PlayerTick(id, team, teamProbability, motion, BodyTick.of(bodyAt(time))));
        }

        private Optional<Body> bodyAt(double time) {
            Map.Entry<Double, Body> before = bodies.floorEntry(time + 1e-9);
            Map.Entry<Double, Body> after = bodies.ceilingEntry(time);
            double back = before == null ? Double.POSITIVE_INFINITY : time - before.getKey();
            double ahead = after == null ? Double.POSITIVE_INFINITY : after.getKey() - time;
            if (Math.min(back, ahead) > BODY_REACH_SECONDS) {
                return Optional.empty();
            }
            return Optional.of(back <= ahead ? before.getValue() : after.getValue());
        }
    }
}
