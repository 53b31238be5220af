package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;

/**
 * Wanders towards a team-mate and stays there.
 *
 * @param mate towards whom
 * @param withinMetres how near
 * @param haste how much faster than strolling: in a short possession one who strolls comes too late to be in anybody's way
 */
record DriftGoal(Role mate, double withinMetres, double haste) implements Goal {

    private static final double STROLL_METRES_PER_SECOND = 1.8;

    @Override
    public FloorVector wish(Floor floor, Mover self) {
        FloorVector there = floor.mover(mate).position();
        FloorVector target = there.plus(self.position().minus(there).unit().times(withinMetres));
        FloorVector wished = Steering.arrive(self, target, FloorVector.ZERO, haste * STROLL_METRES_PER_SECOND);
        return Steering.around(self, wished, floor.everyone(), 1.2, 0);
    }
}
