package floorgauge.events.step;

/** What a player does in a step. */
public enum StepKind {
    DRIBBLE,
    PASS,
    HANDOFF,
    SCREEN,
    CUT,
    SHOT,
    /** The ball goes to an opponent. */
    TURNOVER,
    /** A shorter way without the ball: drawn, but no step of its own. */
    SHIFT;

    public boolean numbered() {
        return this != SHIFT;
    }

    /** Whether a player covers ground in it. */
    public boolean moves() {
        return this == DRIBBLE || this == CUT || this == SCREEN || this == SHIFT;
    }
}
