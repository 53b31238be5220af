package floorgauge.vision.ball;

import floorgauge.court.calibration.PinholeCamera;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Team;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Who has the ball at each point of its way: the likeliest sequence of holders and of flight between them, found exactly over
 * the whole way (Viterbi, 1967). A holder's ball lies on the upright plane at their feet within a dribble's reach, appears
 * with the size that it has at their distance, and does not run away from them.
 */
final class HolderFinder {

    /** No one has it. */
    static final int NOBODY = 0;

    /** How far to the side of their feet a holder's ball lies, one standard deviation, metres. */
    private static final double SIDE_METRES = 0.35;

    /** A ball in hands above the head at most, metres. */
    private static final double HIGHEST_HELD = 2.3;

    private static final double HEIGHT_SOFTNESS = 0.2;

    /** Standard deviation of the logarithm of seen over expected radius. */
    private static final double RADIUS_ERROR = 0.2;

    /** A wrist this near the ball speaks for its owner. */
    private static final double HAND_METRES = 0.3;

    private static final double HAND_GAIN = 1.2;

    /** Sideways away from its holder a dribbled ball is no faster than this as a rule, m/s. */
    private static final double HELD_PACE = 2.5;

    private static final double PACE_SOFTNESS = 1.5;

    /** Cost of a point that nobody holds: as much as lying two standard deviations to the side. */
    private static final double COST_OF_FLIGHT = 2.0;

    private static final double COST_OF_CHANGE = 2.2;

    /** Hands to hands without flight: players within reach of each other. */
    private static final double COST_OF_HANDOFF = 4.0;

    /**
     * The ball goes over to the other side. A ball that seems to leave a player for the opponent beside him, or behind him on
     * the same line of sight, hardly ever did (common practice: a turnover in one possession of six or seven).
     */
    private static final double COST_OF_TURNOVER = 5.0;

    private static final double HANDOFF_METRES = 1.6;
    private static final double IMPOSSIBLE = 25;

    /** Looks this far apart count in full for one holder against another; nearer ones say the same twice, seconds. */
    private static final double ALIKE_SECONDS = 0.25;

    /** Points further apart than this begin anew, seconds. */
    private static final double LONGEST_GAP = 1.0;

    private final PinholeCamera camera;
    private final PlayersAtInstants players;

    HolderFinder(PinholeCamera camera, PlayersAtInstants players) {
        this.camera = camera;
        this.players = players;
    }

    /**
     * One thing that may be so at a point.
     *
     * @param holder who has the ball, or {@link #NOBODY}
     * @param side which had it last; empty where neither had yet
     * @param byKit whether the holder's kit tells the side; else it is the one of before
     */
    private record Choice(int holder, Optional<Team> side, boolean byKit) {}

    /** One point's choices and what each costs by itself. */
    private record Stage(
            double timeSeconds,
            List<Choice> choices,
            double[] cost,
            Map<Integer, PlayerNear> near,
            Map<Integer, Sight> sights) {}

    private static final List<Optional<Team>> SIDES =
            List.of(Optional.empty(), Optional.of(Team.FIRST), Optional.of(Team.SECOND));

    private static final Stage BEFORE_ALL =
            new Stage(Double.NEGATIVE_INFINITY, List.of(), new double[0], Map.of(), Map.of());

    /** For each point the track that has the ball, or {@link #NOBODY}. */
    int[] holders(List<BallPoint> path) {
        int[][] holders = new int[path.size()][];
        int[][] before = new int[path.size()][];
        double[] best = {};
        Stage last = BEFORE_ALL;
        for (int k = 0; k < holders.length; k++) {
            Stage stage = stage(path.get(k), last);
            double[] next = stage.cost().clone();
            before[k] = new int[next.length];
            for (int j = 0; j < next.length && k > 0; j++) {
                double least = Double.POSITIVE_INFINITY;
                for (int i = 0; i < best.length; i++) {
                    double cost = best[i]
                            + change(
                                    last,
                                    stage,
                                    last.choices().get(i),
                                    stage.choices().get(j));
                    if (cost < least) {
                        least = cost;
                        before[k][j] = i;
                    }
                }
                next[j] += least;
            }
            holders[k] = stage.choices().stream().mapToInt(Choice::holder).toArray();
            best = next;
            last = stage;
        }
        return backwards(holders, before, best);
    }

    private static int[] backwards(int[][] holders, int[][] before, double[] last) {
        int[] path = new int[holders.length];
        if (path.length == 0) {
            return path;
        }
        int at = 0;
        for (int i = 1; i < last.length; i++) {
            at = last[i] < last[at] ? i : at;
        }
        for (int k = path.length - 1; k >= 0; k--) {
            path[k] = holders[k][at];
            at = before[k][at];
        }
        return path;
    }

    private static double change(Stage last, Stage stage, Choice from, Choice to) {
        if (!to.byKit() && !to.side().equals(from.side())) {
            return Double.POSITIVE_INFINITY;
        }
        double side = turnover(from.side(), to.side()) ? COST_OF_TURNOVER : 0;
        if (from.holder() == to.holder()) {
            return side;
        }
        boolean anew = stage.timeSeconds() - last.timeSeconds() > LONGEST_GAP;
        if (anew || from.holder() == NOBODY || to.holder() == NOBODY) {
            return COST_OF_CHANGE + side;
        }
        PlayerNear giver = stage.near().get(from.holder());
        PlayerNear taker = stage.near().get(to.holder());
        boolean together =
                giver != null && giver.foot().mean().distanceTo(taker.foot().mean()) <= HANDOFF_METRES;
        return (together ? COST_OF_HANDOFF : IMPOSSIBLE) + side;
    }

    private static boolean turnover(Optional<Team> from, Optional<Team> to) {
        return from.isPresent() && to.isPresent() && !from.equals(to);
    }

    private Stage stage(BallPoint point, Stage last) {
        double seconds = point.timeSeconds() - last.timeSeconds();
        double weight = Math.min(1, seconds / ALIKE_SECONDS);
        Map<Integer, PlayerNear> near = new LinkedHashMap<>();
        Map<Integer, Sight> sights = new LinkedHashMap<>();
        List<Choice> choices = new ArrayList<>();
        List<Double> cost = new ArrayList<>();
        for (Optional<Team> side : SIDES) {
            choices.add(new Choice(NOBODY, side, false));
            cost.add(COST_OF_FLIGHT);
        }
        Map<Integer, Double> held = new LinkedHashMap<>();
        for (PlayerNear player : players.at(point.timeSeconds())) {
            Optional<Sight> seen =
                    Sight.of(camera, point.sighting().centre(), player.foot().mean());
            if (seen.isPresent()) {
                Sight sight = seen.get();
                near.put(player.id(), player);
                sights.put(player.id(), sight);
                held.put(
                        player.id(),
                        cost(point, player, sight)
                                + running(sight, last.sights().get(player.id()), seconds));
            }
        }
        // Whether somebody holds it is told anew by every look, by whoever fits it best; who of two does, is not.
        double least =
                held.values().stream().mapToDouble(Double::doubleValue).min().orElse(0);
        for (PlayerNear player : near.values()) {
            for (Choice choice : choices(player)) {
                choices.add(choice);
                cost.add(least + weight * (held.get(player.id()) - least));
            }
        }
        return new Stage(
                point.timeSeconds(),
                choices,
                cost.stream().mapToDouble(Double::doubleValue).toArray(),
                near,
                sights);
    }

    private static List<Choice> choices(PlayerNear player) {
        Optional<Team> own = Optional.of(player.team());
        return SIDES.contains(own)
                ? List.of(new Choice(player.id(), own, true))
                : SIDES.stream()
                        .map(side -> new Choice(player.id(), side, false))
                        .toList();
    }

    private double cost(BallPoint point, PlayerNear player, Sight sight) {
        double error = player.foot().covariance().varianceAlong(sight.rightX(), sight.rightY());
        double side = sight.lateralMetres() * sight.lateralMetres() / (SIDE_METRES * SIDE_METRES + error);
        double above = Math.max(0, sight.heightMetres() - HIGHEST_HELD) / HEIGHT_SOFTNESS;
        double below = Math.max(0, -sight.heightMetres()) / HEIGHT_SOFTNESS;
        double expected = camera.focalPixels() * BallSize.RADIUS_METRES / sight.depthMetres();
        double size = StrictMath.log(point.sighting().radiusPixels() / expected) / RADIUS_ERROR;
        double hand = handGain(point.sighting().centre(), player, sight);
        return (side + above * above + below * below + Math.min(9, size * size)) / 2 - hand;
    }

    private double handGain(PixelPoint ball, PlayerNear player, Sight sight) {
        double nearest = Double.POSITIVE_INFINITY;
        for (PixelPoint wrist : player.wrists()) {
            nearest = Math.min(nearest, wrist.distanceTo(ball) * sight.depthMetres() / camera.focalPixels());
        }
        double ratio = nearest / HAND_METRES;
        return nearest < 1e6 ? HAND_GAIN * StrictMath.exp(-ratio * ratio / 2) : 0;
    }

    private static double running(Sight now, Sight before, double seconds) {
        if (before == null || !(seconds > 0) || seconds > LONGEST_GAP) {
            return 0;
        }
        double pace = Math.abs(now.lateralMetres() - before.lateralMetres()) / seconds;
        double beyond = Math.max(0, pace - HELD_PACE) / PACE_SOFTNESS;
        return Math.min(8, beyond * beyond / 2);
    }
}
