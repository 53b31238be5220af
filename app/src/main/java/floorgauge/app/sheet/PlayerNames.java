package floorgauge.app.sheet;

import java.util.Optional;

/** Who the players of a film are, as far as someone has said so. */
@FunctionalInterface
public interface PlayerNames {

    /**
     * A player's name as it is to be read, such as {@code 9 Dane Okoro}.
     *
     * @param filmSha256 the film's digest
     * @param trackId a track of it
     * @return the same text for the same person on every film; empty where nobody has said who it is
     */
    Optional<String> nameOf(String filmSha256, int trackId);

    /** Nobody's. */
    static PlayerNames none() {
        return (film, track) -> Optional.empty();
    }
}
