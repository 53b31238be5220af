package floorgauge.sampleclips.scene;

import floorgauge.court.floor.FloorPoint;
import java.util.Objects;

/**
 * One person at one instant.
 *
 * @param person who
 * @param position pelvis projected straight down to the floor, court frame
 * @param velocityXMetresPerSecond along the court
 * @param velocityYMetresPerSecond across the court
 * @param facingRadians where the front of the body points, from the x axis towards y
 * @param action what the body is doing
 * @param actionPhase 0 to 1 through the action, where it has a course
 * @param gaitPhaseRadians grows by 2 pi for every two steps
 * @param jumpMetres height of the soles above the floor, at least 0
 */
public record PersonState(
        Person person,
        FloorPoint position,
        double velocityXMetresPerSecond,
        double velocityYMetresPerSecond,
        double facingRadians,
        Action action,
        double actionPhase,
        double gaitPhaseRadians,
        double jumpMetres) {

    public PersonState {
        Objects.requireNonNull(person, "person");
        Objects.requireNonNull(position, "position");
        Objects.requireNonNull(action, "action");
        if (!(actionPhase >= 0 && actionPhase <= 1)) {
            throw new IllegalArgumentException("a phase lies in 0 to 1: " + actionPhase);
        }
        if (!(jumpMetres >= 0)) {
            throw new IllegalArgumentException("a jump is at least 0 m: " + jumpMetres);
        }
    }

    public double speedMetresPerSecond() {
        return Math.hypot(velocityXMetresPerSecond, velocityYMetresPerSecond);
    }
}
