package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;

/**
 * Steps into the lane of a pass in front of its receiver.
 *
 * @param receiver for whom the pass is meant
 */
record Intercept(Role receiver) implements Goal {

    private static final double IN_FRONT_METRES = 1.3;
    private static final double LUNGE_METRES_PER_SECOND = 5.5;
    private static final double LOOKAHEAD_METRES = 0.8;

    @Override
    public FloorVector wish(Floor floor, Mover mover) {
        FloorVector man = floor.mover(receiver).position();
        FloorVector lane = floor.ball().minus(man);
        FloorVector target = man.plus(lane.atMost(IN_FRONT_METRES));
        FloorVector wished = Steering.arrive(mover, target, FloorVector.ZERO, LUNGE_METRES_PER_SECOND);
        return Steering.around(mover, wished, floor.everyone(), LOOKAHEAD_METRES, 0);
    }
}
