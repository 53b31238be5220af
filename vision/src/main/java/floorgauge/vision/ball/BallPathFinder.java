package floorgauge.vision.ball;

import floorgauge.vision.network.BallSighting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * The likeliest way of one ball through everything that looked like one: the chain of sightings with the largest sum of gains
 * (log odds against a doubtful sighting), less the cost of moves that a ball hardly makes and of looks without it. Found
 * exactly, by dynamic programming (Viterbi, 1967, Error bounds for convolutional codes), over the whole film.
 *
 * <p>Distances are counted in the ball's own radii, so that they mean metres at any place in the picture.
 */
final class BallPathFinder {

    /** A sighting of this score tells neither for nor against the ball. */
    private static final double DOUBTFUL_SCORE = 0.2;

    /** Longest absence that is bridged, seconds; beyond it the ball may be anywhere again. */
    private static final double LONGEST_ABSENCE = 2.0;

    /** A hard pass of 20 m/s (common practice; a ball's radius is 0.12 m) can't be outrun, in radii a second. */
    private static final double FASTEST = 20 / BallSize.RADIUS_METRES;

    /** Moves up to this are usual for a ball that is held or dribbled, radii a second. */
    private static final double USUAL = 5 / BallSize.RADIUS_METRES;

    /** Error of a sighting's place, radii. */
    private static final double PLACE_ERROR = 1.0;

    /** Standard deviation of the logarithm of two radii's ratio. */
    private static final double RADIUS_ERROR = 0.25;

    private static final double COST_OF_ABSENCE_PER_SECOND = 3.0;

    /** Coming back after longer than the longest absence. */
    private static final double COST_OF_RETURN = 6.0;

    private static final double MOVE_WEIGHT = 0.7;

    /** A chain worth less is noise. */
    private static final double LEAST_GAIN = 2.0;

    private BallPathFinder() {}

    private record Node(BallPoint point, double gain) {}

    /** @param looks in order of time */
    static List<BallPoint> find(List<BallLook> looks) {
        List<Node> nodes = nodes(looks);
        double[] best = new double[nodes.size()];
        int[] before = new int[nodes.size()];
        Arrays.fill(before, -1);
        int bestEnd = -1;
        int windowStart = 0;
        int bestOfOld = -1;
        for (int j = 0; j < nodes.size(); j++) {
            double time = nodes.get(j).point().timeSeconds();
            while (nodes.get(windowStart).point().timeSeconds() < time - LONGEST_ABSENCE) {
                if (bestOfOld < 0 || best[windowStart] > best[bestOfOld]) {
                    bestOfOld = windowStart;
                }
                windowStart++;
            }
            double base = 0;
            if (bestOfOld >= 0 && best[bestOfOld] - COST_OF_RETURN > base) {
                base = best[bestOfOld] - COST_OF_RETURN;
                before[j] = bestOfOld;
            }
            for (int i = windowStart; i < j; i++) {
                double sum = best[i] - cost(nodes.get(i).point(), nodes.get(j).point());
                if (sum > base) {
                    base = sum;
                    before[j] = i;
                }
            }
            best[j] = base + nodes.get(j).gain();
            if (bestEnd < 0 || best[j] > best[bestEnd]) {
                bestEnd = j;
            }
        }
        if (bestEnd < 0 || best[bestEnd] < LEAST_GAIN) {
            return List.of();
        }
        List<BallPoint> path = new ArrayList<>();
        for (int j = bestEnd; j >= 0; j = before[j]) {
            path.add(nodes.get(j).point());
        }
        Collections.reverse(path);
        return path;
    }

    private static List<Node> nodes(List<BallLook> looks) {
        List<Node> nodes = new ArrayList<>();
        for (int k = 0; k < looks.size(); k++) {
            BallLook look = looks.get(k);
            for (BallSighting s : look.seen()) {
                double gain = logOdds(s.score()) - logOdds(DOUBTFUL_SCORE);
                nodes.add(new Node(new BallPoint(k, look.frame(), look.timeSeconds(), s), gain));
            }
        }
        return nodes;
    }

    private static double logOdds(double p) {
        double bounded = Math.min(0.98, Math.max(0.02, p));
        return StrictMath.log(bounded / (1 - bounded));
    }

    private static double cost(BallPoint from, BallPoint to) {
        double seconds = to.timeSeconds() - from.timeSeconds();
        if (!(seconds > 0)) {
            return Double.POSITIVE_INFINITY;
        }
        double r0 = from.sighting().radiusPixels();
        double r1 = to.sighting().radiusPixels();
        double radii = from.sighting().centre().distanceTo(to.sighting().centre()) / Math.sqrt(r0 * r1);
        double beyondError = Math.max(0, radii - PLACE_ERROR);
        if (beyondError > FASTEST * seconds) {
            return Double.POSITIVE_INFINITY;
        }
        double pace = beyondError / (USUAL * seconds);
        double size = StrictMath.log(r1 / r0) / RADIUS_ERROR;
        int skipped = to.look() - from.look() - 1;
        double absence = skipped > 0 ? COST_OF_ABSENCE_PER_SECOND * seconds : 0;
        return MOVE_WEIGHT * StrictMath.log1p(pace * pace) + Math.min(2, size * size / 2) * MOVE_WEIGHT + absence;
    }
}
