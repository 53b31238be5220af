package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;

/** Stays at a place, and comes back to it when pushed. */
record Stand(FloorVector place) implements Goal {

    @Override
    public FloorVector wish(Floor floor, Mover self) {
        return Steering.arrive(self, place, FloorVector.ZERO, 1.2);
    }

    @Override
    public boolean reached() {
        return true;
    }
}
