package floorgauge.eval.events;

import floorgauge.events.finding.Role;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * How many roles two events share.
 *
 * @param compared roles that both name
 * @param same of them those held by the same people
 */
record RoleAgreement(int compared, int same) {

    static RoleAgreement of(EventMark label, EventMark result, Optional<Identities> identities) {
        if (identities.isEmpty()) {
            return new RoleAgreement(0, 0);
        }
        int compared = 0;
        int same = 0;
        for (Role role : label.roles().keySet()) {
            boolean both = result.roles().containsKey(role) && !label.cantTell().contains(role.words());
            if (both) {
                compared++;
                same += people(result, role, identities.get())
                                .equals(label.roles().get(role))
                        ? 1
                        : 0;
            }
        }
        return new RoleAgreement(compared, same);
    }

    /** The labelled people behind the result's tracks; a track that stands for nobody is kept as a stranger. */
    private static SortedSet<Integer> people(EventMark result, Role role, Identities identities) {
        SortedSet<Integer> people = new TreeSet<>();
        for (int track : result.roles().get(role)) {
            OptionalInt person = identities.labelledPerson(track, result.momentSeconds());
            people.add(person.orElse(-track));
        }
        return people;
    }

    /** 1 where nothing could be compared: nothing speaks against it. */
    double share() {
        return compared == 0 ? 1 : (double) same / compared;
    }
}
