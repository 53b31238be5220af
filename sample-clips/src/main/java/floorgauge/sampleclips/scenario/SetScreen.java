package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;
import java.util.List;
import java.util.Optional;

/**
 * Goes to a defender's body, on the side to which the user of the screen will go, and plants there; or, with a fault, stands
 * beside it, or never comes to rest; or, hurried by a user who leaves too soon, stops where he is when that one comes by.
 */
final class SetScreen implements Goal {

    /** Between the envelopes of the screener and the defender when the screen is set. */
    private static final double GAP_METRES = 0.06;

    private static final double LOOKAHEAD_METRES = 1.2;
    private static final double WIDE_METRES = 0.78;
    private static final double STAND_OFF_METRES = 0.35;
    private static final double STEP_IN_METRES_PER_SECOND = 0.5;
    private static final double GUARDED_FROM_METRES = 1.0;
    private static final double GONE_METRES_PER_SECOND = 1.3;
    private static final double THERE_METRES = 0.1;
    private static final double STILL_METRES_PER_SECOND = 0.3;
    private static final double PATIENCE_SECONDS = 3.5;
    private static final double SLIDE_IN_SECONDS = 0.6;
    private static final double SLIDE_SECONDS = 2.0;
    /** One who comes up to a standing defender does not push him away. */
    private static final double CAREFUL_YIELD = 1000;

    private static final double PLANTED_YIELD = 0.03;
    private static final double NEAR_METRES = 1.3;
    private static final double PASSED_METRES = 0.35;
    /** A user this near and this fast comes by, whether his screener is set or not. */
    private static final double COMING_METRES = 1.8;

    private static final double COMING_METRES_PER_SECOND = 1.5;
    private static final double PAST_METRES = 2.2;
    /** A screener holds his screen until the defender is past as well. */
    private static final double HELD_AFTER_SECONDS = 0.6;

    /** One who has screened opens up and makes room, but stays about. */
    private static final double AFTER_REACH = 0.4;

    private final Role self;
    private final Role user;
    private final Role defender;
    private final FloorVector toward;
    private final Optional<FloorVector> spot;
    private final Optional<FloorVector> facing;
    private final double pace;
    private final FloorVector amiss;
    private final double slideMetresPerSecond;
    private final boolean hurried;
    private double startSeconds = -1;
    private double setSeconds = -1;
    private double nearSeconds = -1;
    private double nearest = Double.MAX_VALUE;
    private double passedSeconds = Double.MAX_VALUE;
    private double usedSeconds = Double.MAX_VALUE;
    private boolean atHand;
    private FloorVector aim;
    private FloorVector sound = FloorVector.ZERO;
    private FloorVector planted = FloorVector.ZERO;
    private FloorVector intended = FloorVector.ZERO;

    SetScreen(
            Role self,
            Role user,
            Role defender,
            FloorVector toward,
            Optional<FloorVector> spot,
            Optional<FloorVector> facing,
            double pace,
            FloorVector amiss,
            double slideMetresPerSecond,
            boolean hurried) {
        this.self = self;
        this.user = user;
        this.defender = defender;
        this.toward = toward;
        this.spot = spot;
        this.facing = facing;
        this.pace = pace;
        this.amiss = amiss;
        this.slideMetresPerSecond = slideMetresPerSecond;
        this.hurried = hurried;
    }

    Role user() {
        return user;
    }

    Role defender() {
        return defender;
    }

    /** Where the front of a planted screener points: to the defender as he stood, or as the scenario says. */
    FloorVector facing() {
        return facing.orElse(planted.minus(toward));
    }

    boolean isSet() {
        return setSeconds >= 0;
    }

    /** Whether its user has run by. */
    boolean isPassed() {
        return passedSeconds < Double.MAX_VALUE;
    }

    /** Whether its user has run by and left. */
    boolean isUsed() {
        return usedSeconds < Double.MAX_VALUE;
    }

    /** Where the screen should stand: its user runs by it. */
    FloorVector intended(Floor floor) {
        return isSet() ? intended : soundSpot(floor);
    }

    /** How far the screener stands from that place, to a side of his own choice. */
    FloorVector amiss(Floor floor, Mover mover) {
        return amiss.equals(FloorVector.ZERO)
                ? FloorVector.ZERO
                : mover.position().minus(intended(floor));
    }

    @Override
    public boolean reached() {
        return isSet();
    }

    @Override
    public FloorVector wish(Floor floor, Mover mover) {
        if (startSeconds < 0) {
            startSeconds = floor.time();
            mover.yielding(CAREFUL_YIELD);
        }
        if (isSet()) {
            watchUser(floor, mover);
            return floor.time() - usedSeconds > HELD_AFTER_SECONDS
                    ? new KeepAbout(self, planted, AFTER_REACH).wish(floor, mover)
                    : stay(floor, mover);
        }
        if (aim == null || !defenderGone(floor)) {
            sound = soundSpot(floor);
            aim = sound.plus(miss(floor));
        }
        FloorVector target = aim;
        FloorVector matched =
                spot.isPresent() ? FloorVector.ZERO : floor.mover(defender).velocity();
        boolean there = target.distanceTo(mover.position()) < THERE_METRES
                && mover.velocity().length() < STILL_METRES_PER_SECOND;
        boolean slidesIn = slideMetresPerSecond > 0
                && target.distanceTo(mover.position()) < THERE_METRES + SLIDE_IN_SECONDS * slideMetresPerSecond;
        if (there || slidesIn || userComes(floor, mover) || floor.time() - startSeconds > PATIENCE_SECONDS) {
            setSeconds = floor.time();
            planted = mover.position();
            intended = !amiss.equals(FloorVector.ZERO) || slideMetresPerSecond > 0 ? sound : planted;
            mover.yielding(slideMetresPerSecond > 0 ? CAREFUL_YIELD : PLANTED_YIELD);
        }
        if (!atHand(floor, mover)) {
            FloorVector before = target.plus(standOff(floor));
            FloorVector approach = Steering.arrive(mover, before, matched, pace);
            return Steering.around(mover, approach, floor.everyone(), LOOKAHEAD_METRES, 0, WIDE_METRES);
        }
        FloorVector wished = Steering.arrive(mover, target, FloorVector.ZERO, STEP_IN_METRES_PER_SECOND)
                .plus(matched);
        return Steering.around(mover, wished, inTheWay(floor, mover, target), LOOKAHEAD_METRES, 0);
    }

    /** The user is gone once he has been near and is well past. */
    private void watchUser(Floor floor, Mover mover) {
        double distance = floor.mover(user).position().distanceTo(mover.position());
        if (distance < NEAR_METRES && nearSeconds < 0) {
            nearSeconds = floor.time();
        }
        nearest = Math.min(nearest, distance);
        if (nearSeconds >= 0 && !isPassed() && distance > nearest + PASSED_METRES) {
            passedSeconds = floor.time();
        }
        if (nearSeconds >= 0 && !isUsed() && distance > PAST_METRES) {
            usedSeconds = floor.time();
            mover.yielding(1);
        }
    }

    /** A screener does not run after a defender who has left. */
    private boolean defenderGone(Floor floor) {
        return slideMetresPerSecond == 0 && floor.mover(defender).velocity().length() > GONE_METRES_PER_SECOND;
    }

    /** A user who left too soon is about to run by: all that is left is to stop where one is. */
    private boolean userComes(Floor floor, Mover mover) {
        Mover runner = floor.mover(user);
        FloorVector way = mover.position().minus(runner.position());
        return hurried && way.length() < COMING_METRES && runner.velocity().dot(way.unit()) > COMING_METRES_PER_SECOND;
    }

    /** Comes up in front of the defender first, then steps in. */
    private boolean atHand(Floor floor, Mover mover) {
        atHand |=
                aim.plus(standOff(floor)).distanceTo(mover.position()) < 0.2 || aim.distanceTo(mover.position()) < 0.3;
        return atHand;
    }

    private FloorVector standOff(Floor floor) {
        return defendersWay(floor).times(STAND_OFF_METRES);
    }

    /** All but the defender at whose side the target lies, once that side is reached. */
    private List<Mover> inTheWay(Floor floor, Mover mover, FloorVector target) {
        Mover body = floor.mover(defender);
        boolean onThatSide =
                target.distanceTo(mover.position()) < body.position().distanceTo(mover.position());
        return floor.everyone().stream().filter(m -> m != body || !onThatSide).toList();
    }

    /** Planted; or, with the fault, still sliding after the defender. */
    private FloorVector stay(Floor floor, Mover mover) {
        if (slideMetresPerSecond > 0 && floor.time() - setSeconds < SLIDE_SECONDS) {
            FloorVector left = soundSpot(floor).minus(mover.position());
            planted = mover.position();
            return left.unit().times(Math.min(slideMetresPerSecond, left.length() / 0.1));
        }
        return Steering.arrive(mover, planted, FloorVector.ZERO, 0.4);
    }

    private FloorVector soundSpot(Floor floor) {
        FloorVector body = floor.mover(defender).position();
        return spot.orElseGet(
                () -> body.plus(defendersWay(floor).times(2 * HumanLimits.BODY_RADIUS_METRES + GAP_METRES)));
    }

    /** From the defender to where he must go: between the rim and the spot that the user makes for. */
    private FloorVector defendersWay(Floor floor) {
        FloorVector goal = toward.plus(floor.rim().minus(toward).unit().times(GUARDED_FROM_METRES));
        return goal.minus(floor.mover(defender).position()).unit();
    }

    /** The fault's shift: x along the defender's way, y across it. */
    private FloorVector miss(Floor floor) {
        FloorVector way = defendersWay(floor);
        return way.times(amiss.x()).plus(way.left().times(amiss.y()));
    }
}
