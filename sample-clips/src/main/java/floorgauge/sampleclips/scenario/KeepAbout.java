package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;

/**
 * Keeps about a place without the ball: a few steps along the arc and back, away from team-mates who come near. Stands quiet
 * where a screen is on its way to him, where the ball is on its way to him, and, but for a foot, while he holds it.
 *
 * @param self the attacker
 * @param place the place kept
 * @param reach how far from it, as a share of what is usual
 */
record KeepAbout(Role self, FloorVector place, double reach) implements Goal {

    private static final double ALONG_ARC_METRES = 1.5;
    private static final double TO_RIM_METRES = 0.8;
    /** Of a holder's pivot, and of one who waits for a screen or the ball. */
    private static final double QUIET_SHARE = 0.12;

    private static final double ROOM_METRES = 3.6;
    private static final double ROOM_GIVEN = 0.9;
    private static final double MOST_ROOM_METRES = 1.6;
    private static final double LOOKAHEAD_METRES = 1.2;
    private static final double QUIET_METRES_PER_SECOND = 1.2;

    @Override
    public FloorVector wish(Floor floor, Mover mover) {
        if (floor.standing()) {
            return Steering.arrive(mover, place, FloorVector.ZERO, QUIET_METRES_PER_SECOND);
        }
        boolean quiet = floor.quiet(self);
        Restlessness.Move move = floor.restlessness().move(self, floor.time());
        FloorVector out = place.minus(floor.rim()).unit();
        double share = quiet ? Math.min(reach, QUIET_SHARE) : reach;
        FloorVector offset = out.left()
                .times(move.offset().x() * ALONG_ARC_METRES)
                .plus(out.times(move.offset().y() * TO_RIM_METRES))
                .times(share);
        FloorVector target = place.plus(offset);
        if (!quiet) {
            target = target.plus(room(floor, target));
        }
        target = floor.inside(target, place);
        double pace = quiet ? QUIET_METRES_PER_SECOND : move.paceMetresPerSecond();
        FloorVector wished = Steering.arrive(mover, target, FloorVector.ZERO, pace);
        return Steering.around(mover, wished, floor.everyone(), LOOKAHEAD_METRES, 0);
    }

    /** Away from team-mates who are too near; not from a screener, who comes for a reason. */
    private FloorVector room(Floor floor, FloorVector target) {
        FloorVector away = FloorVector.ZERO;
        for (Role mate : floor.movers().keySet()) {
            boolean other = !mate.defends() && !mate.equals(self);
            if (other && !(floor.goal(mate) instanceof SetScreen)) {
                FloorVector from = target.minus(floor.mover(mate).position());
                double lacking = ROOM_METRES - from.length();
                if (lacking > 0) {
                    away = away.plus(from.unit().times(lacking * ROOM_GIVEN));
                }
            }
        }
        return away.atMost(MOST_ROOM_METRES);
    }

    /** Keeps about a place as far as is usual. */
    static KeepAbout at(Role self, FloorVector place) {
        return new KeepAbout(self, place, 1);
    }
}
