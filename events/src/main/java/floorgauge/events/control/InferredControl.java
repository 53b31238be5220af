package floorgauge.events.control;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.AttackGeometry;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import java.util.List;
import java.util.Optional;

/**
 * Control without a ball track: a hidden Markov model over the attackers, whose evidence is weak and is treated so.
 *
 * <p>Evidence at one tick (common practice): everyone tends to face the ball; the ball is guarded more closely than its
 * distance from the rim alone would have it; attackers within 2 m of the rim or at rest in a corner have it less often. One
 * second of play counts as one observation. Where no facing was seen, little is left to tell by and the probabilities stay
 * near one in as many as attack.
 */
public final class InferredControl implements BallControl {

    private static final int STEP_TICKS = UniformClock.ticks(0.2);
    private static final double STEP_SECONDS = 0.2;

    /** Attackers hold the ball some three seconds between passes (common practice). */
    private static final double CHANGE_A_STEP = STEP_SECONDS / 3;

    private static final double FACING_DEVIATION_RADIANS = 0.9;
    private static final double MOST_FACING = 1.5;
    private static final double TIGHT_METRES = 1.3;
    private static final double TIGHT_DEVIATION = 0.8;
    private static final double NAMED_FROM = 0.5;

    private final Play play;
    private final List<PlayerPath> attackers;
    private final double[][] posterior;

    public InferredControl(Play play) {
        this.play = play;
        this.attackers = play.attackers();
        int steps = (play.size() - 1) / STEP_TICKS + 1;
        double[][] likelihood = new double[steps][];
        for (int s = 0; s < steps; s++) {
            likelihood[s] = likelihoods(s * STEP_TICKS);
        }
        this.posterior = smooth(likelihood);
    }

    private double[] likelihoods(int i) {
        double[] result = new double[attackers.size()];
        for (int a = 0; a < result.length; a++) {
            PlayerPath candidate = attackers.get(a);
            result[a] = candidate.seen(i) ? Math.exp(STEP_SECONDS * logLikelihood(candidate, i)) : 1e-3;
        }
        return result;
    }

    private double logLikelihood(PlayerPath candidate, int i) {
        return facing(candidate, i) + tightness(candidate, i) + place(candidate, i);
    }

    /** Mean over all others of how well they face the candidate. */
    private double facing(PlayerPath candidate, int i) {
        double sum = 0;
        int count = 0;
        for (List<PlayerPath> side : List.of(attackers, play.defenders())) {
            for (PlayerPath other : side) {
                if (other == candidate || !other.seen(i) || Double.isNaN(other.facing(i))) {
                    continue;
                }
                double toward = Math.atan2(candidate.y(i) - other.y(i), candidate.x(i) - other.x(i));
                double off = Math.IEEEremainder(other.facing(i) - toward, 2 * Math.PI);
                double deviation = Math.hypot(FACING_DEVIATION_RADIANS, other.facingError(i));
                sum += Math.max(-MOST_FACING, -off * off / (2 * deviation * deviation));
                count++;
            }
        }
        return count == 0 ? 0 : sum / count * Math.sqrt(count);
    }

    private double tightness(PlayerPath candidate, int i) {
        double least = Double.POSITIVE_INFINITY;
        for (PlayerPath defender : play.defenders()) {
            if (defender.seen(i)) {
                least = Math.min(least, defender.distanceTo(candidate, i));
            }
        }
        if (Double.isInfinite(least)) {
            return 0;
        }
        double off = Math.max(0, least - TIGHT_METRES) / TIGHT_DEVIATION;
        return -Math.min(2, off * off / 2);
    }

    private double place(PlayerPath candidate, int i) {
        AttackGeometry geometry = play.geometry();
        double rim = geometry.rimDistance(candidate.x(i), candidate.y(i));
        double underRim = rim < 2 ? -0.7 : 0;
        double corner = Math.min(
                geometry.cornerDistance(candidate.x(i), candidate.y(i), 1),
                geometry.cornerDistance(candidate.x(i), candidate.y(i), -1));
        return underRim + (corner < 2 && candidate.speed(i) < 1 ? -0.5 : 0);
    }

    private double[][] smooth(double[][] likelihood) {
        int steps = likelihood.length;
        int n = attackers.size();
        double[][] forward = new double[steps][n];
        for (int s = 0; s < steps; s++) {
            for (int a = 0; a < n; a++) {
                double prior = s == 0 ? 1.0 / n : moved(forward[s - 1], a);
                forward[s][a] = prior * likelihood[s][a];
            }
            normalise(forward[s]);
        }
        double[] beta = new double[n];
        java.util.Arrays.fill(beta, 1);
        for (int s = steps - 1; s >= 0; s--) {
            double[] weighted = new double[n];
            for (int a = 0; a < n; a++) {
                weighted[a] = beta[a] * likelihood[s][a];
                forward[s][a] *= beta[a];
            }
            normalise(forward[s]);
            for (int a = 0; a < n; a++) {
                beta[a] = moved(weighted, a);
            }
            normalise(beta);
        }
        return forward;
    }

    private static double moved(double[] from, int to) {
        double all = 0;
        for (double f : from) {
            all += f;
        }
        int n = from.length;
        return n == 1 ? all : from[to] * (1 - CHANGE_A_STEP) + (all - from[to]) * CHANGE_A_STEP / (n - 1);
    }

    private static void normalise(double[] weights) {
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
    }

    @Override
    public boolean ballSeen() {
        return false;
    }

    @Override
    public Optional<PlayerPath> controller(int i) {
        for (PlayerPath attacker : attackers) {
            if (probability(attacker, i) >= NAMED_FROM) {
                return Optional.of(attacker);
            }
        }
        return Optional.empty();
    }

    @Override
    public double probability(PlayerPath player, int i) {
        int a = attackers.indexOf(player);
        int s = Math.max(0, Math.min(posterior.length - 1, (i + STEP_TICKS / 2) / STEP_TICKS));
        return a < 0 ? 0 : posterior[s][a];
    }
}
