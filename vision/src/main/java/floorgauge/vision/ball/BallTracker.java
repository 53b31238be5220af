package floorgauge.vision.ball;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.PinholeCamera;
import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.PlayerTrack;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The ball's way over the floor, from what looked like a ball and from where the players were.
 *
 * <p>A held ball lies beside its holder: its place to the side is seen, its distance from the camera is theirs to within an
 * arm. A ball in flight follows a parabola under gravity between its ends; where it bounced on the way, the straight line
 * between the ends, with a larger error and no height. Where neither end is known and no parabola fits, it is left out: lost.
 */
public final class BallTracker {

    /** An arm towards or away from the camera, one standard deviation, metres. */
    private static final double ARM_METRES = 0.35;

    /** Beside its holder as seen, metres. */
    private static final double SIDE_ERROR = 0.08;

    /** No holder's ball is further to the side, metres (a dribble's reach). */
    private static final double REACH = 1.1;

    /** A bounce pass leaves the straight line between its ends by no more, metres. */
    private static final double LINE_ERROR = 0.4;

    /** Two points of one holder are joined over such a gap, seconds. */
    private static final double LONGEST_JOIN = 1.5;

    /** A flight without known ends needs as many sightings to be told. */
    private static final int LEAST_LEG = 4;

    /** A flight that is to take points from a holder must fit them this well. */
    private static final double CLOSE_FIT_RADII = 0.4;

    /** From hands to hands, seconds (common practice: a pass is in the air for less than a second and a half). */
    private static final double LONGEST_PASS = 1.5;

    /** No free flight between hands, rim and floor lasts as long, seconds. */
    private static final double LONGEST_FLIGHT = 3.0;

    private final PinholeCamera camera;
    private final PlayersAtInstants players;
    private final FlightFitter fitter;

    private BallTracker(PinholeCamera camera, Collection<PlayerTrack> tracks) {
        this.camera = camera;
        this.players = new PlayersAtInstants(tracks);
        this.fitter = new FlightFitter(camera);
    }

    /**
     * @param looks what looked like a ball, in order of time
     * @param tracks the players of the same film
     * @return in order of time, one for each look in which the ball's place is known; empty where the calibration does not
     *     tell the camera, so that nothing above the floor can be placed
     */
    public static Optional<List<BallObservation>> track(
            List<BallLook> looks, Collection<PlayerTrack> tracks, CourtCalibration calibration) {
        return calibration.camera().map(camera -> new BallTracker(camera, tracks).follow(looks));
    }

    private List<BallObservation> follow(List<BallLook> looks) {
        List<BallPoint> path = BallPathFinder.find(StillThings.without(looks));
        int[] holders = new HolderFinder(camera, players).holders(path);
        widenFlights(path, holders);
        List<BallObservation> ball = new ArrayList<>();
        int k = 0;
        while (k < holders.length) {
            int end = endOfRun(holders, k);
            if (holders[k] == HolderFinder.NOBODY) {
                fly(path, holders, k, end, ball);
            } else {
                hold(path, holders[k], k, end, looks, ball);
            }
            k = end;
        }
        return ball;
    }

    /** The first index behind this one at which somebody else has the ball. */
    private static int endOfRun(int[] holders, int from) {
        int end = from + 1;
        while (end < holders.length && holders[end] == holders[from]) {
            end++;
        }
        return end;
    }

    private void hold(
            List<BallPoint> path, int holder, int from, int to, List<BallLook> looks, List<BallObservation> ball) {
        for (int k = from; k < to; k++) {
            if (k > from) {
                unseen(path.get(k - 1), path.get(k), holder, looks, ball);
            }
            BallPoint point = path.get(k);
            held(point, holder)
                    .ifPresent(end -> ball.add(new BallObservation(
                            point.frame(),
                            point.timeSeconds(),
                            end.floor(),
                            OptionalDouble.of(end.heightMetres()),
                            Optional.of(point.sighting().centre()),
                            OptionalInt.of(holder),
                            point.sighting().score())));
        }
    }

    /** Looks between two sightings in the same hands: the ball is with its holder, out of sight. */
    private void unseen(BallPoint a, BallPoint b, int holder, List<BallLook> looks, List<BallObservation> ball) {
        if (b.timeSeconds() - a.timeSeconds() > LONGEST_JOIN) {
            return;
        }
        for (BallLook look : looks.subList(a.look() + 1, b.look())) {
            players.at(holder, look.timeSeconds())
                    .ifPresent(player -> ball.add(new BallObservation(
                            look.frame(),
                            look.timeSeconds(),
                            new FloorEstimate(
                                    player.foot().mean(),
                                    player.foot().covariance().plus(FloorCovariance.isotropic(ARM_METRES))),
                            OptionalDouble.empty(),
                            Optional.empty(),
                            OptionalInt.of(holder),
                            Math.min(a.sighting().score(), b.sighting().score()))));
        }
    }

    /** The ball in somebody's hands. */
    private Optional<FlightEnd> held(BallPoint point, int holder) {
        return players.at(holder, point.timeSeconds())
                .flatMap(player -> Sight.of(
                                camera, point.sighting().centre(), player.foot().mean())
                        .map(sight -> beside(point, player, sight)));
    }

    private static FlightEnd beside(BallPoint point, PlayerNear player, Sight sight) {
        double side = Math.max(-REACH, Math.min(REACH, sight.lateralMetres()));
        FloorPoint foot = player.foot().mean();
        FloorPoint place =
                new FloorPoint(foot.xMetres() + side * sight.rightX(), foot.yMetres() + side * sight.rightY());
        FloorCovariance own = along(sight.rightX(), sight.rightY(), SIDE_ERROR, ARM_METRES);
        double height = Math.max(BallSize.RADIUS_METRES, sight.heightMetres());
        return new FlightEnd(
                point.timeSeconds(),
                new FloorEstimate(place, player.foot().covariance().plus(own)),
                height);
    }

    /** Standard deviations along a unit direction and across it. */
    private static FloorCovariance along(double dx, double dy, double along, double across) {
        double a = along * along;
        double b = across * across;
        return new FloorCovariance(a * dx * dx + b * dy * dy, (a - b) * dx * dy, a * dy * dy + b * dx * dx);
    }

    /** Free flights one after the other, as between a shot, the rim and the floor. */
    private void fly(List<BallPoint> path, int[] holders, int from, int to, List<BallObservation> ball) {
        Optional<FlightEnd> start = from == 0 ? Optional.empty() : held(path.get(from - 1), holders[from - 1]);
        Optional<FlightEnd> end = to == holders.length ? Optional.empty() : held(path.get(to), holders[to]);
        int at = from;
        while (at < to) {
            Optional<FlightEnd> left = at == from ? start : Optional.empty();
            Leg leg = longestLeg(path, at, to, left, end);
            for (BallPoint point : path.subList(at, leg.to())) {
                flying(point, leg.flight(), start, end).ifPresent(ball::add);
            }
            at = leg.to();
        }
    }

    /** A piece of the way that one free flight explains; without one where none does. */
    private record Leg(int to, Optional<Flight> flight) {}

    private Leg longestLeg(List<BallPoint> path, int from, int to, Optional<FlightEnd> start, Optional<FlightEnd> end) {
        int last = to;
        while (last > from + 1
                && path.get(last - 1).timeSeconds() - path.get(from).timeSeconds() > LONGEST_FLIGHT) {
            last--;
        }
        for (int stop = last; stop - from >= (stop == to ? 1 : LEAST_LEG); stop--) {
            Optional<FlightEnd> arrives = stop == to ? end : Optional.empty();
            if (start.isEmpty() && arrives.isEmpty() && stop - from < LEAST_LEG) {
                break;
            }
            Optional<Flight> flight = fitter.fit(path.subList(from, stop), start, arrives);
            if (flight.isPresent()) {
                return new Leg(stop, flight);
            }
        }
        return new Leg(from + 1, Optional.empty());
    }

    private Optional<BallObservation> flying(
            BallPoint point, Optional<Flight> flight, Optional<FlightEnd> start, Optional<FlightEnd> end) {
        double time = point.timeSeconds();
        Optional<FloorEstimate> floor = flight.map(f -> f.floorAt(time));
        OptionalDouble height = flight.isPresent()
                ? OptionalDouble.of(Math.max(0, flight.get().heightAt(time)))
                : OptionalDouble.empty();
        if (floor.isEmpty() && start.isPresent() && end.isPresent()) {
            floor = Optional.of(between(start.get(), end.get(), time));
        }
        return floor.map(f -> new BallObservation(
                point.frame(),
                time,
                f,
                height,
                Optional.of(point.sighting().centre()),
                OptionalInt.empty(),
                point.sighting().score()));
    }

    /**
     * Moves release and reception outward as long as the same free flight explains the points there too: a ball that leaves
     * along the line of sight seems to stay in its giver's hands for a while.
     */
    private void widenFlights(List<BallPoint> path, int[] holders) {
        int k = 0;
        while (k < holders.length) {
            int end = endOfRun(holders, k);
            if (holders[k] == HolderFinder.NOBODY) {
                int first = k;
                while (first > 1 && stillFlies(path, holders, first - 1, end)) {
                    holders[--first] = HolderFinder.NOBODY;
                }
                while (end < holders.length - 1 && stillFlies(path, holders, first, end + 1)) {
                    holders[end++] = HolderFinder.NOBODY;
                }
            }
            k = end;
        }
    }

    private boolean stillFlies(List<BallPoint> path, int[] holders, int from, int to) {
        boolean known = from > 0
                && to < holders.length
                && holders[from - 1] != HolderFinder.NOBODY
                && holders[to] != HolderFinder.NOBODY;
        if (!known || path.get(to - 1).timeSeconds() - path.get(from).timeSeconds() > LONGEST_PASS) {
            return false;
        }
        List<BallPoint> points = path.subList(from, to);
        double radius = points.stream()
                .mapToDouble(p -> p.sighting().radiusPixels())
                .average()
                .orElse(1);
        return fitter.fit(points, held(path.get(from - 1), holders[from - 1]), held(path.get(to), holders[to]))
                .filter(f -> f.pixelError() <= CLOSE_FIT_RADII * radius)
                .isPresent();
    }

    private static FloorEstimate between(FlightEnd a, FlightEnd b, double time) {
        double share = (time - a.timeSeconds()) / (b.timeSeconds() - a.timeSeconds());
        FloorPoint p = a.floor().mean();
        FloorPoint q = b.floor().mean();
        return new FloorEstimate(
                new FloorPoint(
                        p.xMetres() + share * (q.xMetres() - p.xMetres()),
                        p.yMetres() + share * (q.yMetres() - p.yMetres())),
                FloorCovariance.isotropic(LINE_ERROR));
    }
}
