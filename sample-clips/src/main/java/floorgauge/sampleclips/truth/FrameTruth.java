package floorgauge.sampleclips.truth;

import floorgauge.sampleclips.render.camera.Camera;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What is true of one frame, in the middle of its exposure.
 *
 * @param index of the frame, from 0
 * @param timeSeconds presentation time, from 0
 * @param sceneSeconds the scene's time in the middle of the exposure
 * @param camera lens and pose
 * @param people everyone of the scene, in order of id
 * @param ball empty where the scene has none
 */
public record FrameTruth(
        long index,
        double timeSeconds,
        double sceneSeconds,
        Camera camera,
        List<PersonTruth> people,
        Optional<BallTruth> ball) {

    public FrameTruth {
        Objects.requireNonNull(camera, "camera");
        Objects.requireNonNull(ball, "ball");
        people = List.copyOf(people);
    }
}
