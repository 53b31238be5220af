package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.PersonState;

/** Whether passes fly by people or through them. */
final class PassLanes {

    private static final double STEP_SECONDS = 0.02;

    private PassLanes() {}

    /** How many passes of a scene go through the body of someone who neither throws nor catches them. */
    static long throughBodies(PlayedScene scene) {
        return scene.controls().stream()
                .filter(c -> c.kind() == Control.Kind.PASS)
                .filter(c -> goesThroughABody(scene, c))
                .count();
    }

    private static boolean goesThroughABody(PlayedScene scene, Control pass) {
        double end = Math.min(scene.durationSeconds(), pass.toSeconds());
        for (double t = pass.fromSeconds(); t < end; t += STEP_SECONDS) {
            var state = scene.at(t);
            BallState ball = state.ball().orElseThrow();
            for (PersonState person : state.people()) {
                int id = person.person().id();
                boolean other = id != pass.from() && id != pass.to().orElseThrow();
                if (other && isInside(ball, person)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isInside(BallState ball, PersonState person) {
        double away = FloorVector.of(person.position()).distanceTo(new FloorVector(ball.xMetres(), ball.yMetres()));
        return away < HumanLimits.BODY_RADIUS_METRES
                && ball.zMetres() < person.person().heightMetres();
    }
}
