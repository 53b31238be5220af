package floorgauge.sampleclips.scenario;

import java.util.List;

/** An execution fault with its size. Names of steps are labels. */
sealed interface Fault {

    /** The screen stands this many metres beside the defender's body instead of against it. */
    record ScreenMisses(String step, double byMetres) implements Fault {}

    /** The screener never comes to rest: slides into the defender's way at this speed. */
    record ScreenerMoving(String step, double metresPerSecond) implements Fault {}

    /** A step begins this many seconds later than it should: a pass held, a cut that starts late. */
    record Late(String step, double bySeconds) implements Fault {}

    /** A step begins this many seconds too soon: a cutter who leaves before the screen is set. */
    record Early(String step, double bySeconds) implements Fault {}

    /** An attacker drifts to within this many metres of a team-mate, from a time on. */
    record Drift(Role who, Role towards, double withinMetres, double fromSeconds) implements Fault {}

    /** A step that is not done at all, with those that wait for it begun as if it had been. */
    record LeftOut(String step) implements Fault {}

    /** A pass that the receiver's defender picks off. */
    record Stolen(String step) implements Fault {}

    /** Attackers without a step stand and watch for a while, and their defenders with them. */
    record Standing(double fromSeconds, double lastingSeconds) implements Fault {}

    /** All the faults of a version. */
    static List<String> words() {
        return List.of(
                "screen misses",
                "screener moving",
                "pass held",
                "pass stolen",
                "late cut",
                "early cut",
                "drift",
                "left out",
                "players stand");
    }
}
