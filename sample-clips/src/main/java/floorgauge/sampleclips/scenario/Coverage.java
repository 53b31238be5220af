package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;

/**
 * What the screener's defender does against a ball screen, for a while; then he guards his man again.
 *
 * @param verb hedge, blitz or drop
 * @param handler the attacker with the ball
 * @param pace largest speed
 * @param untilSeconds when it ends
 * @param after what follows
 */
record Coverage(Verb verb, Role handler, double pace, double untilSeconds, Goal after) implements Goal {

    private static final double LOOKAHEAD_METRES = 1.0;

    @Override
    public FloorVector wish(Floor floor, Mover self) {
        if (floor.time() >= untilSeconds) {
            return after.wish(floor, self);
        }
        FloorVector man = floor.seenPosition(handler);
        FloorVector velocity = floor.seenVelocity(handler);
        FloorVector target = switch (verb) {
            case HEDGE -> man.plus(ahead(floor, man, velocity).times(1.3));
            case BLITZ -> man.plus(beside(floor, man, self).times(0.95));
            default -> below(floor, man);
        };
        FloorVector wished = Steering.arrive(self, target, velocity.times(0.8), pace);
        return Steering.around(self, wished, floor.everyone(), LOOKAHEAD_METRES, 0);
    }

    /** In the way of the dribble, else between the ball and the rim. */
    private static FloorVector ahead(Floor floor, FloorVector man, FloorVector velocity) {
        FloorVector toRim = floor.rim().minus(man).unit();
        return velocity.length() > 0.8 ? velocity.unit().plus(toRim.times(0.2)).unit() : toRim;
    }

    /** At the handler's side from which the defender comes. */
    private static FloorVector beside(Floor floor, FloorVector man, Mover self) {
        FloorVector toRim = floor.rim().minus(man).unit();
        double side = toRim.cross(self.position().minus(man)) >= 0 ? 1 : -1;
        return toRim.turned(side * Math.PI / 2.6);
    }

    /** Between the ball and the rim, deep. */
    private static FloorVector below(Floor floor, FloorVector man) {
        FloorVector out = man.minus(floor.rim());
        double deep = Math.max(1.4, Math.min(3.0, out.length() - 2.6));
        return floor.rim().plus(out.unit().times(deep));
    }
}
