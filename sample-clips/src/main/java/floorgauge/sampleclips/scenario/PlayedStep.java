package floorgauge.sampleclips.scenario;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * A step as it came out.
 *
 * @param label from the scenario
 * @param verb in the words of the scenario language
 * @param who person id
 * @param other person id of the player behind the verb: whom the pass goes to, whom the screen is set on
 * @param user person id of the team-mate a screen is meant for
 * @param kind in the trade's words, where the scenario names it: flare, backdoor
 * @param startSeconds when it began
 * @param endSeconds when it was done: the screen set, the spot reached, the ball received; the end of the scene where it was not
 */
public record PlayedStep(
        String label,
        String verb,
        int who,
        OptionalInt other,
        OptionalInt user,
        Optional<String> kind,
        double startSeconds,
        double endSeconds) {}
