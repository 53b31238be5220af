package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Guards whoever is the defender's man: between man and rim on the ball, between man, ball and rim off it, chasing when he runs.
 *
 * @param self the defender's role
 * @param gap metres to stay off the man, where the scenario says so
 * @param pace largest speed
 * @param way round a screener's body
 */
record Guard(Role self, OptionalDouble gap, double pace, Way way) implements Goal {

    /** How to get round a screen. */
    enum Way {
        /** Whichever way is shorter, once the body is felt. */
        CHASE,
        /** Between the screener and the user. */
        OVER,
        /** On the far side of the screener. */
        UNDER
    }

    private static final double ON_BALL_METRES = 1.0;
    private static final double ONE_PASS_AWAY_METRES = 6.5;
    private static final double RUNNING_METRES_PER_SECOND = 2.2;
    private static final double OFF_SCREENER_METRES = 1.2;
    private static final double FELT_METRES = 0.78;
    private static final double SEEN_METRES = 1.9;
    private static final double SHUFFLE_METRES = 0.25;

    @Override
    public FloorVector wish(Floor floor, Mover mover) {
        Role man = floor.man(self);
        FloorVector place = floor.seenPosition(man);
        FloorVector velocity = floor.seenVelocity(man);
        FloorVector target = place.plus(velocity.times(Floor.REACTION_SECONDS))
                .plus(offset(floor, man, place, velocity))
                .plus(shuffle(floor, man));
        List<Mover> team = floor.team(self);
        FloorVector straight = Steering.arrive(mover, target, velocity.times(0.9), pace);
        FloorVector wished = Steering.around(mover, straight, team, SEEN_METRES, 0);
        return round(floor, mover, man, wished);
    }

    /** Feet that do not rest; quiet where a screen comes, so that the screener finds him. */
    private FloorVector shuffle(Floor floor, Role man) {
        boolean quiet = floor.standing() || floor.awaitsScreen(man) || floor.goal(man) instanceof SetScreen;
        return quiet
                ? FloorVector.ZERO
                : floor.restlessness().move(self, floor.time()).offset().times(SHUFFLE_METRES);
    }

    private FloorVector offset(Floor floor, Role man, FloorVector place, FloorVector velocity) {
        FloorVector toRim = floor.rim().minus(place).unit();
        boolean onBall = floor.holder().filter(man::equals).isPresent();
        if (onBall) {
            return toRim.times(gap.orElse(ON_BALL_METRES));
        }
        FloorVector toBall = floor.ball().minus(place);
        double away = toBall.length();
        if (floor.goal(man) instanceof SetScreen screen) {
            return offScreener(floor, screen, toRim, toBall);
        }
        if (velocity.length() > RUNNING_METRES_PER_SECOND) {
            return toRim.times(0.55).plus(toBall.unit().times(0.25)).unit().times(gap.orElse(0.8));
        }
        double help = Math.min(2, Math.max(0, 0.35 * (away - ONE_PASS_AWAY_METRES)));
        FloorVector between = toRim.times(0.65).plus(toBall.unit().times(0.35)).unit();
        return between.times(gap.orElse(1.15 + help));
    }

    /** The screener's defender leaves room for the one who is screened: below a ball screen, else on the ball side. */
    private static FloorVector offScreener(Floor floor, SetScreen screen, FloorVector toRim, FloorVector toBall) {
        boolean ballScreen = floor.holder().filter(screen.user()::equals).isPresent();
        FloorVector away =
                ballScreen ? toRim : toRim.times(0.3).plus(toBall.unit()).unit();
        return away.times(OFF_SCREENER_METRES);
    }

    private FloorVector round(Floor floor, Mover mover, Role man, FloorVector wished) {
        if (way == Way.CHASE) {
            return Steering.around(mover, wished, floor.everyone(), FELT_METRES, 0);
        }
        for (Role mate : floor.movers().keySet()) {
            if (!mate.defends() && !mate.equals(man) && floor.goal(mate) instanceof SetScreen) {
                FloorVector screener = floor.mover(mate).position();
                FloorVector toScreener = screener.minus(mover.position());
                FloorVector toMan = floor.mover(man).position().minus(mover.position());
                double manSide = toScreener.cross(toMan) >= 0 ? 1 : -1;
                double side = way == Way.OVER ? manSide : -manSide;
                double distance = way == Way.OVER ? FELT_METRES : SEEN_METRES;
                return Steering.around(mover, wished, floor.everyone(), distance, side);
            }
        }
        return Steering.around(mover, wished, floor.everyone(), FELT_METRES, 0);
    }
}
