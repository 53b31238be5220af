package floorgauge.court.track;

import java.util.List;
import java.util.Objects;

/**
 * One person through a film or a stretch of it.
 *
 * @param id belongs to the film, from 1
 * @param team by kit
 * @param teamProbability that the team is right, 0 to 1
 * @param observations in order of time, at most one a frame, at least one
 * @param doubts spans in which this track may have been exchanged with another
 * @param appearance over the whole track
 */
public record PlayerTrack(
        int id,
        Team team,
        double teamProbability,
        List<PlayerObservation> observations,
        List<IdentityDoubt> doubts,
        Appearance appearance) {

    /** A track of which only the kit is known. */
    public PlayerTrack(
            int id,
            Team team,
            double teamProbability,
            List<PlayerObservation> observations,
            List<IdentityDoubt> doubts) {
        this(id, team, teamProbability, observations, doubts, Appearance.UNSEEN);
    }

    public PlayerTrack {
        Objects.requireNonNull(team, "team");
        Objects.requireNonNull(appearance, "appearance");
        observations = List.copyOf(observations);
        doubts = List.copyOf(doubts);
        if (id < 1) {
            throw new IllegalArgumentException("track ids count from 1: " + id);
        }
        if (!(teamProbability >= 0 && teamProbability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + teamProbability);
        }
        if (observations.isEmpty()) {
            throw new IllegalArgumentException("track " + id + " has no observation");
        }
        for (int i = 1; i < observations.size(); i++) {
            PlayerObservation before = observations.get(i - 1);
            PlayerObservation after = observations.get(i);
            if (after.frame() <= before.frame() || after.timeSeconds() <= before.timeSeconds()) {
                throw new IllegalArgumentException("track " + id + " runs backwards at frame " + after.frame() + " ("
                        + after.timeSeconds() + " s)");
            }
        }
    }
}
