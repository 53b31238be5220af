package floorgauge.eval.events;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which labelled person a track of the result stands for. Ids of labels and of tracks are separate worlds; scoring needs a
 * bridge to compare roles.
 */
@FunctionalInterface
public interface Identities {

    /**
     * @param trackId of the result
     * @param timeSeconds a track may go on with another person
     * @return the labelled person's id; empty where the track stands for nobody who is labelled
     */
    OptionalInt labelledPerson(int trackId, double timeSeconds);

    /** The labels were made on the result's own ids, or both come from one scene. */
    static Identities same() {
        return (trackId, time) -> OptionalInt.of(trackId);
    }

    /** No bridge: roles cannot be compared and events are matched by time alone. */
    static Optional<Identities> unknown() {
        return Optional.empty();
    }
}
