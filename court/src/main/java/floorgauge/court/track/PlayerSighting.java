package floorgauge.court.track;

import java.util.Objects;

/**
 * One tracked person in one frame.
 *
 * @param trackId belongs to the film, from 1
 * @param team by kit
 * @param teamProbability that the team is right, 0 to 1
 * @param observation where and how the person was seen
 */
public record PlayerSighting(int trackId, Team team, double teamProbability, PlayerObservation observation) {

    public PlayerSighting {
        Objects.requireNonNull(team, "team");
        Objects.requireNonNull(observation, "observation");
        if (trackId < 1) {
            throw new IllegalArgumentException("track ids count from 1: " + trackId);
        }
        if (!(teamProbability >= 0 && teamProbability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + teamProbability);
        }
    }
}
