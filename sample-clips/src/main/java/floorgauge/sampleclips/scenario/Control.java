package floorgauge.sampleclips.scenario;

import java.util.OptionalInt;

/**
 * A span in which the ball is in one state.
 *
 * @param kind what the ball does
 * @param fromSeconds start
 * @param toSeconds end
 * @param from who has it, or who released it
 * @param to who receives it; empty for any kind but a pass
 */
public record Control(Kind kind, double fromSeconds, double toSeconds, int from, OptionalInt to) {

    /** States of the ball. */
    public enum Kind {
        HELD,
        DRIBBLED,
        /** From release to reception. */
        PASS,
        /** From release to the rim. */
        SHOT,
        /** Nobody's, after a shot. */
        LOOSE
    }

    /** Whether a player controls the ball. */
    public boolean controlled() {
        return kind == Kind.HELD || kind == Kind.DRIBBLED;
    }
}
