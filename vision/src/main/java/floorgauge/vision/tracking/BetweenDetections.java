package floorgauge.vision.tracking;

import floorgauge.court.track.ImageBox;
import floorgauge.vision.network.Detection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Where people are in a frame that lies between two in which the detector ran: each one found in both frames, on the straight way
 * between. At the human limit of 6 m/s2 (common practice) a player leaves that way by a T^2 / 8 = 2 cm in T = 0.16 s, less than the
 * detector's own error; what could go wrong is who is who, and where that is not plain the frame must be looked at itself.
 *
 * <p>Lengths are heights of the boxes, so that a film's resolution changes nothing.
 */
final class BetweenDetections {

    /** The fastest a player runs, 9 m/s, over a height of 1.85 m. */
    private static final double MOST_HEIGHTS_A_SECOND = 9 / 1.85;

    /** The edges of boxes shake by this much. */
    private static final double SHAKE = 0.12;

    /** Boxes of one person grow and shrink by less than this, as people bend and rise. */
    private static final double MOST_GROWTH = 1.35;

    /** Another pairing that costs less than this more is as good. */
    private static final double PLAIN = 0.15;

    private static final Comparator<Detection> BEST_FIRST = Comparator.comparingDouble(Detection::score)
            .reversed()
            .thenComparingDouble(d -> d.box().left())
            .thenComparingDouble(d -> d.box().top());

    private BetweenDetections() {}

    /**
     * The people in between, best first.
     *
     * @param before what the detector found in the earlier frame
     * @param after what it found in the later one
     * @param seconds between the two
     * @param share of that time at which the frame in between lies, 0 to 1
     * @param confidentScore who scores less, and is not found again, is not missed
     * @return empty where somebody came, went, or could as well be another
     */
    static Optional<List<Detection>> of(
            List<Detection> before, List<Detection> after, double seconds, double share, double confidentScore) {
        double[][] costs = costs(before, after, SHAKE + MOST_HEIGHTS_A_SECOND * seconds);
        Assignment assignment = new Assignment(before.size(), after.size(), 0);
        for (int i = 0; i < before.size(); i++) {
            for (int k = 0; k < after.size(); k++) {
                if (Double.isFinite(costs[i][k])) {
                    assignment.allow(i, k, costs[i][k] - 2 * (SHAKE + MOST_HEIGHTS_A_SECOND * seconds));
                }
            }
        }
        int[] pairs = assignment.solve();
        if (!isComplete(pairs, before, after, confidentScore) || !isPlain(pairs, costs)) {
            return Optional.empty();
        }
        List<Detection> between = new ArrayList<>();
        for (int i = 0; i < pairs.length; i++) {
            if (pairs[i] != Assignment.NONE) {
                between.add(between(before.get(i), after.get(pairs[i]), share));
            }
        }
        between.sort(BEST_FIRST);
        return Optional.of(between);
    }

    private static double[][] costs(List<Detection> before, List<Detection> after, double most) {
        double[][] costs = new double[before.size()][after.size()];
        for (int i = 0; i < before.size(); i++) {
            for (int k = 0; k < after.size(); k++) {
                double cost = cost(before.get(i).box(), after.get(k).box());
                costs[i][k] = cost <= most ? cost : Double.POSITIVE_INFINITY;
            }
        }
        return costs;
    }

    /** How far the middle of the box moved, in heights; infinite where the sizes can't be one person's. */
    private static double cost(ImageBox a, ImageBox b) {
        double growth = Math.max(a.height(), b.height()) / Math.min(a.height(), b.height());
        if (growth > MOST_GROWTH) {
            return Double.POSITIVE_INFINITY;
        }
        double dx = a.left() + a.width() / 2 - b.left() - b.width() / 2;
        double dy = a.top() + a.height() / 2 - b.top() - b.height() / 2;
        return 2 * Math.hypot(dx, dy) / (a.height() + b.height());
    }

    private static boolean isComplete(
            int[] pairs, List<Detection> before, List<Detection> after, double confidentScore) {
        boolean[] used = new boolean[after.size()];
        for (int i = 0; i < pairs.length; i++) {
            if (pairs[i] != Assignment.NONE) {
                used[pairs[i]] = true;
            } else if (before.get(i).score() >= confidentScore) {
                return false;
            }
        }
        for (int k = 0; k < used.length; k++) {
            if (!used[k] && after.get(k).score() >= confidentScore) {
                return false;
            }
        }
        return true;
    }

    /** Whether no two people could as well have changed places. */
    private static boolean isPlain(int[] pairs, double[][] costs) {
        for (int i = 0; i < pairs.length; i++) {
            for (int j = i + 1; j < pairs.length; j++) {
                if (pairs[i] != Assignment.NONE && pairs[j] != Assignment.NONE) {
                    double crossed = costs[i][pairs[j]] + costs[j][pairs[i]];
                    if (crossed - costs[i][pairs[i]] - costs[j][pairs[j]] < PLAIN) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private static Detection between(Detection a, Detection b, double share) {
        ImageBox box = new ImageBox(
                mixed(a.box().left(), b.box().left(), share),
                mixed(a.box().top(), b.box().top(), share),
                mixed(a.box().width(), b.box().width(), share),
                mixed(a.box().height(), b.box().height(), share));
        return new Detection(box, Math.min(a.score(), b.score()));
    }

    private static double mixed(double a, double b, double share) {
        return a + share * (b - a);
    }
}
