package floorgauge.sampleclips.scenario;

import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;

/**
 * A scenario as it stands in its file.
 *
 * @param file name of the file, for messages
 * @param name of the scenario, the file's name without its ending
 * @param title one line for a list
 * @param rules court
 * @param end the rim under attack
 * @param durationSeconds least length of the scene, which goes on until its last step has begun
 * @param attack where each attacker starts
 * @param defence where a defender starts, for those who do not start on their own attacker
 * @param ball who starts with the ball
 * @param steps the timed movements, in the order of the file
 * @param versions faults by version; {@code sound} has none
 * @param cast details of players that are not left to the seed, by role
 */
record Scenario(
        String file,
        String name,
        String title,
        RuleSet rules,
        CourtEnd end,
        double durationSeconds,
        SortedMap<Role, Spot> attack,
        SortedMap<Role, Spot> defence,
        Role ball,
        List<Step> steps,
        Map<String, List<Fault>> versions,
        SortedMap<Role, CastDetail> cast) {

    /** The version without a fault, which each scenario has. */
    static final String SOUND = "sound";

    /** Whether a version holds a step back. */
    boolean holds(String label) {
        return versions.values().stream()
                .flatMap(List::stream)
                .anyMatch(f -> f instanceof Fault.Late late && late.step().equals(label));
    }

    /** How many attack, and how many defend. */
    int playersASide() {
        return attack.size();
    }
}
