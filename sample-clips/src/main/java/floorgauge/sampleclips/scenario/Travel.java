package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;
import java.util.Optional;

/** Goes to a spot: by way of another, or off a team-mate shoulder to hip. */
final class Travel implements Goal {

    /** Between the envelopes of a cutter and the screener whose hip is brushed. */
    private static final double BRUSH_METRES = 0.08;

    /** A user bends his way to a screen that stands amiss, to pass it about this far off. */
    private static final double FARTHEST_METRES = 1.5;

    private static final double LOOKAHEAD_METRES = 1.8;
    private static final double THERE_METRES = 0.3;

    private final Role self;
    private final FloorVector target;
    private final Optional<FloorVector> via;
    private final Optional<Role> off;
    private final double pace;
    private final boolean dribble;
    private double side;
    private boolean pastVia;
    private boolean pastOff;
    private boolean reached;

    Travel(Role self, FloorVector target, Optional<FloorVector> via, Optional<Role> off, double pace, boolean dribble) {
        this.self = self;
        this.target = target;
        this.via = via;
        this.off = off;
        this.pace = pace;
        this.dribble = dribble;
        this.pastVia = via.isEmpty();
        this.pastOff = off.isEmpty();
    }

    boolean isDribble() {
        return dribble;
    }

    @Override
    public boolean reached() {
        return reached;
    }

    @Override
    public FloorVector wish(Floor floor, Mover mover) {
        if (!pastVia) {
            FloorVector point = via.orElseThrow();
            pastVia = point.distanceTo(mover.position()) < 0.35;
            return round(floor, mover, Steering.pass(mover, point, pace));
        }
        if (!pastOff) {
            FloorVector point = shoulder(floor, mover);
            FloorVector onward = target.minus(point).unit();
            pastOff = point.distanceTo(mover.position()) < 0.12
                    || mover.position().minus(point).dot(onward) > 0;
            return round(floor, mover, Steering.pass(mover, point, pace));
        }
        reached |= target.distanceTo(mover.position()) < THERE_METRES;
        return reached
                ? KeepAbout.at(self, target).wish(floor, mover)
                : round(floor, mover, Steering.arrive(mover, target, FloorVector.ZERO, pace));
    }

    /** The point beside the team-mate that the path brushes, on the side from which the runner comes. */
    private FloorVector shoulder(Floor floor, Mover mover) {
        Role mate = off.orElseThrow();
        FloorVector centre = floor.goal(mate) instanceof SetScreen screen
                ? screen.intended(floor)
                : floor.mover(mate).position();
        FloorVector across = target.minus(centre).unit().left();
        if (side == 0) {
            side = across.dot(mover.position().minus(centre)) >= 0 ? 1 : -1;
        }
        double brush = 2 * HumanLimits.BODY_RADIUS_METRES + BRUSH_METRES;
        double amiss = floor.goal(mate) instanceof SetScreen screen
                ? side * across.dot(screen.amiss(floor, floor.mover(mate)))
                : 0;
        double beside = amiss > 0 ? amiss + brush : Math.min(brush, amiss + FARTHEST_METRES);
        return centre.plus(across.times(side * beside));
    }

    private static FloorVector round(Floor floor, Mover mover, FloorVector wished) {
        return Steering.around(mover, wished, floor.everyone(), LOOKAHEAD_METRES, 0);
    }
}
