package floorgauge.sampleclips.labels;

import java.util.List;
import java.util.Objects;

/**
 * A stretch of play in which one side attacks one rim.
 *
 * @param fromSeconds start
 * @param toSeconds end
 * @param attackers ids, in order
 * @param defenders ids, in order
 * @param outcome shot, turnover, foul, stoppage or end of film
 */
public record LabelledPossession(
        double fromSeconds, double toSeconds, List<Integer> attackers, List<Integer> defenders, String outcome) {

    /** Ways in which a possession ends. */
    public static final List<String> OUTCOMES = List.of("shot", "turnover", "foul", "stoppage", "end of film");

    public LabelledPossession {
        attackers = List.copyOf(attackers);
        defenders = List.copyOf(defenders);
        Objects.requireNonNull(outcome, "outcome");
        if (!(toSeconds >= fromSeconds)) {
            throw new IllegalArgumentException("a possession ends after its start: " + fromSeconds);
        }
        if (!OUTCOMES.contains(outcome)) {
            throw new IllegalArgumentException("unknown outcome: " + outcome);
        }
    }
}
