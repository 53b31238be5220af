package floorgauge.events.finding;

import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * How a possession agrees with the script that it resembles most.
 *
 * @param script name of the script
 * @param probability that this script was being run, 0 to 1; doubts about identities are in it
 * @param mirrored whether it was run to the other side than it is written for
 * @param roles who had which role, in the script's order
 * @param steps the way through the script that agrees best, in order
 * @param breakdown index in {@code steps} of the first that was skipped, blown or out of order; empty where all were done
 * @param breakdownProbability that this step broke, and none before it, and the script was being run; 0 without one
 * @param sentence one plain sentence
 */
public record ScriptReading(
        String script,
        double probability,
        boolean mirrored,
        List<RolePlayer> roles,
        List<StepReading> steps,
        OptionalInt breakdown,
        double breakdownProbability,
        String sentence) {

    public ScriptReading {
        Objects.requireNonNull(script, "script");
        Objects.requireNonNull(breakdown, "breakdown");
        Objects.requireNonNull(sentence, "sentence");
        roles = List.copyOf(roles);
        steps = List.copyOf(steps);
        if (!(probability >= 0 && probability <= 1) || !(breakdownProbability >= 0 && breakdownProbability <= 1)) {
            throw new IllegalArgumentException(
                    "probabilities lie in 0 to 1: " + probability + ", " + breakdownProbability);
        }
        if (breakdown.isPresent() && (breakdown.getAsInt() < 0 || breakdown.getAsInt() >= steps.size())) {
            throw new IllegalArgumentException("no step " + breakdown.getAsInt() + " of " + steps.size());
        }
    }

    /**
     * Who plays a role.
     *
     * @param role the script's word for it
     * @param trackId a track of the film
     */
    public record RolePlayer(String role, int trackId) {

        public RolePlayer {
            Objects.requireNonNull(role, "role");
        }
    }

    /**
     * What became of a step.
     *
     * @param words the step as it stands in the script
     * @param state whether it was done
     * @param fromSeconds start of what was taken for it, presentation time; NaN where nothing was
     * @param toSeconds its end; NaN where nothing was
     * @param brokenProbability that it was skipped, blown or out of order, given that the script was being run
     * @param why what speaks for that, in plain words; empty where it was done
     */
    public record StepReading(
            String words, State state, double fromSeconds, double toSeconds, double brokenProbability, String why) {

        public StepReading {
            Objects.requireNonNull(words, "words");
            Objects.requireNonNull(state, "state");
            Objects.requireNonNull(why, "why");
            if (!(brokenProbability >= 0 && brokenProbability <= 1)) {
                throw new IllegalArgumentException("a probability lies in 0 to 1: " + brokenProbability);
            }
        }
    }

    /** What may become of a step. */
    public enum State {
        DONE("done"),
        BLOWN("blown"),
        SKIPPED("skipped"),
        OUT_OF_ORDER("out of order"),
        LEFT_OUT("left out, as the script allows"),
        /** Nothing can be said of it, since the ball was not tracked. */
        NOT_SEEN("not seen");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        /** Whether the script broke here. */
        public boolean isBroken() {
            return this == BLOWN || this == SKIPPED || this == OUT_OF_ORDER;
        }
    }
}
