package floorgauge.court.track;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Everyone on the floor in one frame: the unit in which tracks stream from vision to events, so that a film of any length
 * needs bounded memory.
 *
 * @param frame index of the frame in presentation order, from 0
 * @param timeSeconds presentation time
 * @param players in order of track id, each id once
 * @param ball empty where the ball was not seen, or not looked for
 */
public record FloorFrame(long frame, double timeSeconds, List<PlayerSighting> players, Optional<BallObservation> ball) {

    public FloorFrame {
        players = List.copyOf(players);
        Objects.requireNonNull(ball, "ball");
        Set<Integer> ids = new HashSet<>();
        for (PlayerSighting player : players) {
            if (!ids.add(player.trackId())) {
                throw new IllegalArgumentException("track " + player.trackId() + " stands twice in frame " + frame);
            }
        }
    }
}
