package floorgauge.events.pass;

import floorgauge.events.play.PlayerPath;
import java.util.Optional;

/**
 * The end of a player's control of the ball. Indexes are the play's.
 *
 * @param kind what became of the ball
 * @param from who had it
 * @param to who got it; empty for a shot
 * @param release last index of control
 * @param reception first index of the next control; of a shot when the ball is at the rim
 * @param gained index at which {@code from} had come to control it
 */
public record BallEvent(Kind kind, PlayerPath from, Optional<PlayerPath> to, int release, int reception, int gained) {

    /** What may become of the ball. */
    public enum Kind {
        PASS,
        HANDOFF,
        SHOT,
        TURNOVER
    }
}
