package floorgauge.sampleclips.scenario;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One timed movement.
 *
 * @param line in its file
 * @param label unique in the scenario; other steps and faults refer to it
 * @param start when it begins
 * @param who does it
 * @param verb what
 * @param other the player behind the verb: whom to pass to, whom to screen, whom to guard
 * @param to the spot behind the verb
 * @param via a spot to pass on the way
 * @param off the team-mate whose screen or body is brushed on the way
 * @param forWhom the team-mate whom a screen is meant for
 * @param toward the spot where the user of a screen will go
 * @param at the spot at which a screen is set, where it is not set on the defender's body
 * @param pace largest speed in metres a second
 * @param lasting seconds
 * @param gap metres between a defender and the attacker guarded
 * @param kind of screen or cut, in the trade's words
 * @param facingDegrees where a screener faces, 0 towards the rim, counter-clockwise from above
 */
record Step(
        int line,
        String label,
        Start start,
        Role who,
        Verb verb,
        Optional<Role> other,
        Optional<Spot> to,
        Optional<Spot> via,
        Optional<Role> off,
        Optional<Role> forWhom,
        Optional<Spot> toward,
        Optional<Spot> at,
        double pace,
        OptionalDouble lasting,
        OptionalDouble gap,
        Optional<String> kind,
        OptionalDouble facingDegrees) {

    /**
     * When a step begins.
     *
     * @param base step that it follows, or empty for a time of its own
     * @param fromItsStart whether the wait counts from that step's start instead of its end
     * @param seconds time of its own, or wait after the base
     */
    record Start(Optional<String> base, boolean fromItsStart, double seconds) {}
}
