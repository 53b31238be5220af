package floorgauge.events.finding;

import floorgauge.court.rules.CourtEnd;
import floorgauge.court.track.Team;
import java.util.List;
import java.util.Objects;

/**
 * A stretch of play in which one team attacks one rim.
 *
 * @param number from 1 through the film
 * @param fromSeconds start, presentation time
 * @param toSeconds end
 * @param attack the attacking team
 * @param attackProbability that it is this team, 0 to 1
 * @param end the end under attack
 * @param attackers their tracks, in order of id
 * @param defenders their tracks, in order of id
 * @param ballSeen whether the ball was tracked; without it control is inferred from the players
 * @param outcome how it ended, in words: shot, turnover, change of attack, end of film, stoppage
 */
public record Possession(
        int number,
        double fromSeconds,
        double toSeconds,
        Team attack,
        double attackProbability,
        CourtEnd end,
        List<Integer> attackers,
        List<Integer> defenders,
        boolean ballSeen,
        String outcome) {

    public Possession {
        Objects.requireNonNull(attack, "attack");
        Objects.requireNonNull(end, "end");
        Objects.requireNonNull(outcome, "outcome");
        attackers = List.copyOf(attackers);
        defenders = List.copyOf(defenders);
        if (number < 1) {
            throw new IllegalArgumentException("possessions count from 1: " + number);
        }
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a possession ends after its start: " + fromSeconds);
        }
        if (!(attackProbability >= 0 && attackProbability <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1: " + attackProbability);
        }
    }
}
