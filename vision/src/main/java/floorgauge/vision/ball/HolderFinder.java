package floorgauge.vision.ball;

import floorgauge.court.calibration.PinholeCamera;
import floorgauge.court.floor.PixelPoint;
import java.util.Arrays;
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

    /** A ball that seems to go from a player to the opponent beside him went along the line of sight as a rule, not away. */
    private static final double COST_OF_STEAL = 10.0;

    private static final double HANDOFF_METRES = 1.6;
    private static final double IMPOSSIBLE = 25;

    /** Points further apart than this begin anew, seconds. */
    private static final double LONGEST_GAP = 1.0;

    private final PinholeCamera camera;
    private final PlayersAtInstants players;

    HolderFinder(PinholeCamera camera, PlayersAtInstants players) {
        this.camera = camera;
        this.players = players;
    }

    /** One point's possible holders. */
    private record Stage(int[] holders, double[] cost, Map<Integer, PlayerNear> near, Map<Integer, Sight> sights) {}

    /** For each point the track that has the ball, or {@link #NOBODY}. */
    int[] holders(List<BallPoint> path) {
        Stage[] stages = new Stage[path.size()];
        int[][] before = new int[path.size()][];
        double[] best = {};
        for (int k = 0; k < stages.length; k++) {
            stages[k] = stage(path, k, k == 0 ? Map.of() : stages[k - 1].sights());
            double[] next = stages[k].cost().clone();
            before[k] = new int[next.length];
            for (int j = 0; j < next.length && k > 0; j++) {
                double least = Double.POSITIVE_INFINITY;
                for (int i = 0; i < best.length; i++) {
                    double cost = best[i] + change(path, stages, k, i, j);
                    if (cost < least) {
                        least = cost;
                        before[k][j] = i;
                    }
                }
                next[j] += least;
            }
            best = next;
        }
        return backwards(stages, before, best);
    }

    private static int[] backwards(Stage[] stages, int[][] before, double[] last) {
        int[] holders = new int[stages.length];
        if (holders.length == 0) {
            return holders;
        }
        int at = 0;
        for (int i = 1; i < last.length; i++) {
            at = last[i] < last[at] ? i : at;
        }
        for (int k = stages.length - 1; k >= 0; k--) {
            holders[k] = stages[k].holders()[at];
            at = before[k][at];
        }
        return holders;
    }

    private double change(List<BallPoint> path, Stage[] stages, int k, int i, int j) {
        int from = stages[k - 1].holders()[i];
        int to = stages[k].holders()[j];
        if (from == to) {
            return 0;
        }
        if (path.get(k).timeSeconds() - path.get(k - 1).timeSeconds() > LONGEST_GAP) {
            return COST_OF_CHANGE;
        }
        if (from == NOBODY || to == NOBODY) {
            return COST_OF_CHANGE;
        }
        PlayerNear giver = stages[k].near().get(from);
        PlayerNear taker = stages[k].near().get(to);
        boolean together =
                giver != null && giver.foot().mean().distanceTo(taker.foot().mean()) <= HANDOFF_METRES;
        if (!together) {
            return IMPOSSIBLE;
        }
        return giver.team() == taker.team() ? COST_OF_HANDOFF : COST_OF_STEAL;
    }

    private Stage stage(List<BallPoint> path, int k, Map<Integer, Sight> sightsBefore) {
        BallPoint point = path.get(k);
        Map<Integer, PlayerNear> near = new LinkedHashMap<>();
        Map<Integer, Sight> sights = new LinkedHashMap<>();
        for (PlayerNear player : players.at(point.timeSeconds())) {
            Optional<Sight> sight =
                    Sight.of(camera, point.sighting().centre(), player.foot().mean());
            if (sight.isPresent()) {
                near.put(player.id(), player);
                sights.put(player.id(), sight.get());
            }
        }
        int[] holders = new int[near.size() + 1];
        double[] cost = new double[holders.length];
        cost[0] = COST_OF_FLIGHT;
        int at = 1;
        for (Map.Entry<Integer, PlayerNear> entry : near.entrySet()) {
            int id = entry.getKey();
            Sight sight = sights.get(id);
            double seconds = k == 0 ? 0 : point.timeSeconds() - path.get(k - 1).timeSeconds();
            holders[at] = id;
            cost[at++] = cost(point, entry.getValue(), sight) + running(sight, sightsBefore.get(id), seconds);
        }
        return new Stage(Arrays.copyOf(holders, at), Arrays.copyOf(cost, at), near, sights);
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
