package floorgauge.events.diagram;

/** What a player does in a step. */
enum StepKind {
    DRIBBLE,
    PASS,
    HANDOFF,
    SCREEN,
    CUT,
    SHOT,
    /** A shorter way without the ball: drawn, but no step of its own. */
    SHIFT;

    boolean numbered() {
        return this != SHIFT;
    }

    /** Whether a player covers ground in it. */
    boolean moves() {
        return this == DRIBBLE || this == CUT || this == SCREEN || this == SHIFT;
    }
}
