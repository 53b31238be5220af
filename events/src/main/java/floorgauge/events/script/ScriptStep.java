package floorgauge.events.script;

import java.util.Objects;
import java.util.Optional;

/**
 * One step of a script.
 *
 * @param line in its file, from 1
 * @param who the role that does it
 * @param verb what
 * @param mate the team-mate for whom the screen is, or who gets the ball
 * @param place where a screen is set, or where a cut or a dribble goes; a name of {@link floorgauge.events.step.Spots}
 * @param off the team-mate past whom a cut or a dribble goes
 * @param kind of screen, in the trade's words
 * @param optional whether it may be left out
 * @param group parts of one group above 0 are run together; 0 for a step by itself
 * @param lane part of the group: steps of one lane keep their order, steps of different lanes come in any order
 */
public record ScriptStep(
        int line,
        String who,
        ScriptVerb verb,
        Optional<String> mate,
        Optional<String> place,
        Optional<String> off,
        Optional<String> kind,
        boolean optional,
        int group,
        int lane) {

    public ScriptStep {
        Objects.requireNonNull(who, "who");
        Objects.requireNonNull(verb, "verb");
        Objects.requireNonNull(mate, "mate");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(off, "off");
        Objects.requireNonNull(kind, "kind");
    }

    /** The step as it would be written, such as {@code 5 screens for 2 at right block}. */
    public String words() {
        StringBuilder words = new StringBuilder(who).append(' ').append(verb.word());
        mate.ifPresent(m -> words.append(' ').append(verb.need()).append(' ').append(m));
        place.ifPresent(
                p -> words.append(verb == ScriptVerb.SCREEN ? " at " : " to ").append(p));
        off.ifPresent(o -> words.append(" off ").append(o));
        return words.toString();
    }
}
