package floorgauge.events.script;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.ScriptReading;
import java.util.Optional;

/**
 * What is held of one step.
 *
 * @param state done or how it broke
 * @param brokenProbability that it broke
 * @param why in plain words that follow the player's name, such as {@code stands 0.42 ± 0.05 m off #7}
 * @param figure what it was judged by
 */
record Verdict(ScriptReading.State state, double brokenProbability, String why, Optional<Figure> figure) {

    private static final double BROKEN = 0.5;

    static Verdict done() {
        return new Verdict(ScriptReading.State.DONE, 0, "", Optional.empty());
    }

    static Verdict leftOut() {
        return new Verdict(ScriptReading.State.LEFT_OUT, 0, "", Optional.empty());
    }

    static Verdict notSeen() {
        return new Verdict(ScriptReading.State.NOT_SEEN, 0, "the ball was not tracked", Optional.empty());
    }

    static Verdict skipped(double probability, String why) {
        return new Verdict(ScriptReading.State.SKIPPED, probability, why, Optional.empty());
    }

    /** Blown where that is likelier than not, else done with what doubt there is. */
    static Verdict of(double probability, String why, Figure figure) {
        return probability >= BROKEN
                ? new Verdict(ScriptReading.State.BLOWN, probability, why, Optional.of(figure))
                : new Verdict(ScriptReading.State.DONE, probability, "", Optional.of(figure));
    }

    boolean isBroken() {
        return state.isBroken();
    }

    Verdict orWorse(Verdict other) {
        return other.brokenProbability > brokenProbability ? other : this;
    }
}
