package floorgauge.events.screen;

import floorgauge.events.play.PlayerPath;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A measured screen. Indexes are the play's.
 *
 * @param screener S
 * @param user U
 * @param userDefender D
 * @param screenerDefender E; empty where S was not guarded
 * @param pass when U and S are nearest
 * @param moment t0, the screen's time: when D and S are nearest around the pass
 * @param from when the screen begins: S is there
 * @param to when its effect has been seen
 * @param probability that this is a screen and not two team-mates passing by
 * @param kind by geometry
 * @param use what came of it
 * @param gap between the envelopes of S and D at t0, metres; below 0 where they overlap
 * @param contactProbability that the gap was at most the contact gap for the contact time
 * @param contactSeconds how long the mean gap was
 * @param speedAtContact mean speed of S in the 0.2 s before and after t0, m/s
 * @param movingProbability that S was faster than the set speed at contact
 * @param brush distance of U and S at the pass, metres
 * @param separationBefore U to D 0.3 s before t0, metres
 * @param separationGained largest U to D after t0 less the one before, metres; empty where it was not seen
 * @param separationIndex when it was largest
 * @param timeLost from t0 until D was back on U, seconds; empty where he was not seen to come back
 * @param next S's next act
 * @param quality the parts that were seen
 */
public record Screen(
        PlayerPath screener,
        PlayerPath user,
        PlayerPath userDefender,
        Optional<PlayerPath> screenerDefender,
        int pass,
        int moment,
        int from,
        int to,
        double probability,
        ScreenKind kind,
        ScreenUse use,
        Estimate gap,
        double contactProbability,
        double contactSeconds,
        Estimate speedAtContact,
        double movingProbability,
        Estimate brush,
        Estimate separationBefore,
        Optional<Estimate> separationGained,
        int separationIndex,
        OptionalDouble timeLost,
        NextAct next,
        ScreenQuality quality) {

    /** This screen with another next act of its screener. */
    Screen then(NextAct act) {
        return new Screen(
                screener,
                user,
                userDefender,
                screenerDefender,
                pass,
                moment,
                from,
                to,
                probability,
                kind,
                use,
                gap,
                contactProbability,
                contactSeconds,
                speedAtContact,
                movingProbability,
                brush,
                separationBefore,
                separationGained,
                separationIndex,
                timeLost,
                act,
                quality);
    }
}
