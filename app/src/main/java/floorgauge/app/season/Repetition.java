package floorgauge.app.season;

import java.util.List;
import java.util.Objects;

/**
 * One possession of a simulated practice.
 *
 * @param scene name in the scenario library
 * @param mirrored whether it is run on the other side of the floor
 * @param lightAttacks which squad has the ball
 * @param secondCentre whether the second centres play
 * @param seed of the errors with which it is tracked
 */
record Repetition(String scene, boolean mirrored, boolean lightAttacks, boolean secondCentre, long seed) {

    Repetition {
        Objects.requireNonNull(scene, "scene");
    }

    /** One practice. */
    record Practice(int number, java.time.LocalDate day, String title, List<Repetition> repetitions) {

        Practice {
            repetitions = List.copyOf(repetitions);
        }
    }
}
