package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;

/** What a body is about: asked every tick for the velocity it wishes. */
interface Goal {

    FloorVector wish(Floor floor, Mover self);

    /** Whether it is reached; it goes on being asked until another takes its place. */
    default boolean reached() {
        return false;
    }
}
