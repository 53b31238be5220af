package floorgauge.events.control;

import floorgauge.events.play.PlayerPath;
import java.util.Optional;

/** Who has the ball at each index of a play. */
public interface BallControl {

    /** Whether the ball itself was seen; without it the answers are inferred and their probability says how surely. */
    boolean ballSeen();

    /** Who most probably controls the ball; empty in flight, or where nobody can be named. */
    Optional<PlayerPath> controller(int i);

    /** Probability that this player controls the ball, 0 to 1. */
    double probability(PlayerPath player, int i);
}
