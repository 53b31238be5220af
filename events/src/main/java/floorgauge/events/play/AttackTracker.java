package floorgauge.events.play;

import floorgauge.court.rules.RuleSet;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Follows who attacks which end: a hidden Markov model over the four attacks, forward as ticks come, backward over a window
 * of {@value #LAG_TICKS} ticks, so that memory is bounded.
 */
final class AttackTracker {

    /** A tick with what is believed of it. */
    record Judged(FloorTick tick, Attack attack, double probability) {}

    private static final int STATES = Attack.values().length;
    private static final int LAG_TICKS = 75;
    private static final int BLOCK_TICKS = 25;

    /** An attack lasts some twenty seconds (shot clock of 24 s; common practice). */
    private static final double CHANGE_A_TICK = 0.04 / 20;

    private final AttackEvidence evidence;
    private final Consumer<Judged> out;
    private final List<FloorTick> ticks = new ArrayList<>();
    private final List<double[]> likelihoods = new ArrayList<>();
    private final List<double[]> forward = new ArrayList<>();

    AttackTracker(RuleSet rules, Consumer<Judged> out) {
        this.evidence = new AttackEvidence(rules);
        this.out = out;
    }

    void accept(FloorTick tick) {
        double[] likelihood = exponentials(evidence.logLikelihoods(tick));
        double[] alpha = new double[STATES];
        double[] before = forward.isEmpty() ? null : forward.get(forward.size() - 1);
        for (int s = 0; s < STATES; s++) {
            alpha[s] = (before == null ? 1.0 / STATES : moved(before, s)) * likelihood[s];
        }
        normalise(alpha);
        ticks.add(tick);
        likelihoods.add(likelihood);
        forward.add(alpha);
        if (ticks.size() >= LAG_TICKS + BLOCK_TICKS) {
            giveOut(BLOCK_TICKS);
        }
    }

    void finish() {
        giveOut(ticks.size());
    }

    private void giveOut(int count) {
        int n = ticks.size();
        double[][] posterior = new double[count][];
        double[] beta = {1, 1, 1, 1};
        for (int k = n - 1; k >= 0; k--) {
            if (k < count) {
                posterior[k] = new double[STATES];
                for (int s = 0; s < STATES; s++) {
                    posterior[k][s] = forward.get(k)[s] * beta[s];
                }
                normalise(posterior[k]);
            }
            double[] weighted = new double[STATES];
            for (int s = 0; s < STATES; s++) {
                weighted[s] = beta[s] * likelihoods.get(k)[s];
            }
            for (int s = 0; s < STATES; s++) {
                beta[s] = moved(weighted, s);
            }
            normalise(beta);
        }
        for (int k = 0; k < count; k++) {
            out.accept(judged(ticks.get(k), posterior[k]));
        }
        ticks.subList(0, count).clear();
        likelihoods.subList(0, count).clear();
        forward.subList(0, count).clear();
    }

    private static Judged judged(FloorTick tick, double[] posterior) {
        int best = 0;
        for (int s = 1; s < STATES; s++) {
            if (posterior[s] > posterior[best]) {
                best = s;
            }
        }
        return new Judged(tick, Attack.values()[best], posterior[best]);
    }

    /** Change is symmetric, so this serves both directions. */
    private static double moved(double[] from, int to) {
        double all = 0;
        for (double f : from) {
            all += f;
        }
        double elsewhere = CHANGE_A_TICK / (STATES - 1);
        return from[to] * (1 - CHANGE_A_TICK) + (all - from[to]) * elsewhere;
    }

    private static double[] exponentials(double[] logs) {
        double most = Double.NEGATIVE_INFINITY;
        for (double l : logs) {
            most = Math.max(most, l);
        }
        double[] result = new double[logs.length];
        for (int i = 0; i < logs.length; i++) {
            result[i] = Math.exp(logs[i] - most);
        }
        return result;
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
}
