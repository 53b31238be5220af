package floorgauge.app.store;

import floorgauge.court.track.Team;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A track of a film, and who it is.
 *
 * @param trackId belongs to the film
 * @param team by kit
 * @param teamProbability that the team is right
 * @param fromSeconds first seen
 * @param toSeconds last seen
 * @param jerseyNumber as it was read; empty where it was not
 * @param jerseyProbability that it was read right
 * @param player who the analyst said it is; empty before that
 */
public record StoredTrack(
        int trackId,
        Team team,
        double teamProbability,
        double fromSeconds,
        double toSeconds,
        OptionalInt jerseyNumber,
        OptionalDouble jerseyProbability,
        Optional<Player> player) {

    public StoredTrack {
        Objects.requireNonNull(team, "team");
        Objects.requireNonNull(jerseyNumber, "jerseyNumber");
        Objects.requireNonNull(jerseyProbability, "jerseyProbability");
        Objects.requireNonNull(player, "player");
    }
}
