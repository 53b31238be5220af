package floorgauge.app.store;

import floorgauge.court.track.Appearance;
import floorgauge.court.track.Team;
import java.util.Objects;
import java.util.Optional;

/**
 * A track of a film, and who it is.
 *
 * @param trackId belongs to the film
 * @param team by kit
 * @param teamProbability that the team is right
 * @param fromSeconds first seen
 * @param toSeconds last seen
 * @param appearance number and shirt as they were seen
 * @param player who the analyst said it is; empty before that
 */
public record StoredTrack(
        int trackId,
        Team team,
        double teamProbability,
        double fromSeconds,
        double toSeconds,
        Appearance appearance,
        Optional<Player> player) {

    public StoredTrack {
        Objects.requireNonNull(team, "team");
        Objects.requireNonNull(appearance, "appearance");
        Objects.requireNonNull(player, "player");
    }

    /** Seconds during which this track and another were both in view; 0 where one ended before the other began. */
    double togetherSeconds(StoredTrack other) {
        return Math.max(0, Math.min(toSeconds, other.toSeconds) - Math.max(fromSeconds, other.fromSeconds));
    }
}
