package floorgauge.sampleclips.scene;

import java.util.List;
import java.util.Optional;

/**
 * Everyone and the ball at one instant.
 *
 * @param timeSeconds from the start of the scene
 * @param people in order of id
 * @param ball empty for a drill without one
 */
public record SceneState(double timeSeconds, List<PersonState> people, Optional<BallState> ball) {

    public SceneState {
        people = List.copyOf(people);
    }
}
