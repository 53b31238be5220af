package floorgauge.events.spacing;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;

/**
 * Where attackers are held to their spacing: not right after they have won the ball, among those whom they guarded, and not once
 * it is shot or lost, when they go for the rebound or turn to defend.
 *
 * @param from first index of the play that counts
 * @param to index after the last
 */
public record SpacingSpan(int from, int to) {

    /** @param over index from which the attackers have the ball no more */
    public static SpacingSpan of(PlayView view, int over) {
        Play play = view.play();
        boolean follows = play.coreFrom() > 0;
        int settle = UniformClock.ticks(view.standards().of(Setting.SPACING_SETTLE_TIME));
        return new SpacingSpan(play.coreFrom() + (follows ? settle : 0), over);
    }
}
