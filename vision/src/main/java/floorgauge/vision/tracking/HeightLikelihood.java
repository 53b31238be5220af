package floorgauge.vision.tracking;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What two heights say on whether they are one person's. Of one person the heights of two stretches of time differ by posture
 * and by the errors of the box: a spread that the film itself teaches. Of two persons they differ by their statures as well.
 *
 * @param spreadMetres standard deviation of a difference of one person's heights
 */
record HeightLikelihood(double spreadMetres) {

    /** Standard deviation of stature among the players of a team (common practice: guards 1.85 m, centres 2.08 m). */
    private static final double STATURES = 0.09;

    /** Before a film has taught anything; as much as this many differences. */
    private static final double PRIOR_SPREAD = 0.12;

    private static final double PRIOR_WEIGHT = 10;

    private static final double WINDOW_SECONDS = 1.5;

    /** Height alone is never surer than this, in nats: a player may bend for as long as he is seen. */
    private static final double MOST = 3;

    /** Learns the spread from stretches of the tracks that lie two windows apart. */
    static HeightLikelihood learn(List<Tracklet> tracks) {
        List<Double> squares = new ArrayList<>();
        for (Tracklet track : tracks) {
            double from = track.startSeconds();
            for (; from + 3 * WINDOW_SECONDS <= track.endSeconds(); from += WINDOW_SECONDS) {
                OptionalDouble one = track.heightMetres(from, from + WINDOW_SECONDS);
                OptionalDouble other = track.heightMetres(from + 2 * WINDOW_SECONDS, from + 3 * WINDOW_SECONDS);
                if (one.isPresent() && other.isPresent()) {
                    double d = one.getAsDouble() - other.getAsDouble();
                    squares.add(d * d);
                }
            }
        }
        double sum = squares.stream().mapToDouble(Double::doubleValue).sum();
        return new HeightLikelihood(
                Math.sqrt((sum + PRIOR_WEIGHT * PRIOR_SPREAD * PRIOR_SPREAD) / (squares.size() + PRIOR_WEIGHT)));
    }

    /** Logarithm of p(difference | one person) over p(difference | two persons); 0 where a height is not known. */
    double logRatio(OptionalDouble one, OptionalDouble other) {
        if (one.isEmpty() || other.isEmpty()) {
            return 0;
        }
        double d = one.getAsDouble() - other.getAsDouble();
        double same = spreadMetres * spreadMetres;
        double different = same + 2 * STATURES * STATURES;
        double ratio = 0.5 * Math.log(different / same) - d * d / 2 * (1 / same - 1 / different);
        return Math.max(-MOST, Math.min(MOST, ratio));
    }
}
