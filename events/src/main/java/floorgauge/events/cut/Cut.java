package floorgauge.events.cut;

import floorgauge.events.play.PlayerPath;

/**
 * A fast run of an attacker without the ball. Indexes are the play's.
 *
 * @param cutter who
 * @param leaves when he leaves: the last instant before it at which he was at a walk
 * @param start when he comes above the cut speed
 * @param end when it falls below the cut speed
 * @param fastest when he is fastest
 * @param name straight, curl, fade or backdoor
 */
public record Cut(PlayerPath cutter, int leaves, int start, int end, int fastest, String name) {

    /** Distance from start to end, metres. */
    public double displacement() {
        return Math.hypot(cutter.x(end) - cutter.x(start), cutter.y(end) - cutter.y(start));
    }
}
