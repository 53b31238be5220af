package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;
import java.util.List;
import java.util.Optional;

/**
 * Goes to a defender's body, on the side to which the user of the screen will go, and plants there; or, with a fault, stands
 * beside it, or never comes to rest.
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

    private final Role user;
    private final Role defender;
    private final FloorVector toward;
    private final Optional<FloorVector> spot;
    private final Optional<FloorVector> facing;
    private final double pace;
    private final FloorVector amiss;
    private final double slideMetresPerSecond;
    private double startSeconds = -1;
    private double setSeconds = -1;
    private boolean atHand;
    private FloorVector aim;
    private FloorVector sound = FloorVector.ZERO;
    private FloorVector planted = FloorVector.ZERO;
    private FloorVector intended = FloorVector.ZERO;

    SetScreen(
            Role user,
            Role defender,
            FloorVector toward,
            Optional<FloorVector> spot,
            Optional<FloorVector> facing,
            double pace,
            FloorVector amiss,
            double slideMetresPerSecond) {
        this.user = user;
        this.defender = defender;
        this.toward = toward;
        this.spot = spot;
        this.facing = facing;
        this.pace = pace;
        this.amiss = amiss;
        this.slideMetresPerSecond = slideMetresPerSecond;
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

    /** Where the screen should stand: its user runs by it. */
    FloorVector intended(Floor floor) {
        return isSet() ? intended : soundSpot(floor);
    }

    /** How far the screener stands from that place, to a side of his own choice. */
    FloorVector amiss(Floor floor, Mover self) {
        return amiss.equals(FloorVector.ZERO)
                ? FloorVector.ZERO
                : self.position().minus(intended(floor));
    }

    @Override
    public boolean reached() {
        return isSet();
    }

    @Override
    public FloorVector wish(Floor floor, Mover self) {
        if (startSeconds < 0) {
            startSeconds = floor.time();
            self.yielding(CAREFUL_YIELD);
        }
        if (isSet()) {
            return stay(floor, self);
        }
        if (aim == null || !defenderGone(floor)) {
            sound = soundSpot(floor);
            aim = sound.plus(miss(floor));
        }
        FloorVector target = aim;
        FloorVector matched =
                spot.isPresent() ? FloorVector.ZERO : floor.mover(defender).velocity();
        boolean there = target.distanceTo(self.position()) < THERE_METRES
                && self.velocity().length() < STILL_METRES_PER_SECOND;
        boolean slidesIn = slideMetresPerSecond > 0
                && target.distanceTo(self.position()) < THERE_METRES + SLIDE_IN_SECONDS * slideMetresPerSecond;
        if (there || slidesIn || floor.time() - startSeconds > PATIENCE_SECONDS) {
            setSeconds = floor.time();
            planted = self.position();
            intended = !amiss.equals(FloorVector.ZERO) || slideMetresPerSecond > 0 ? sound : planted;
            self.yielding(slideMetresPerSecond > 0 ? CAREFUL_YIELD : PLANTED_YIELD);
        }
        if (!atHand(floor, self)) {
            FloorVector before = target.plus(standOff(floor));
            FloorVector approach = Steering.arrive(self, before, matched, pace);
            return Steering.around(self, approach, floor.everyone(), LOOKAHEAD_METRES, 0, WIDE_METRES);
        }
        FloorVector wished = Steering.arrive(self, target, FloorVector.ZERO, STEP_IN_METRES_PER_SECOND)
                .plus(matched);
        return Steering.around(self, wished, inTheWay(floor, self, target), LOOKAHEAD_METRES, 0);
    }

    /** A screener does not run after a defender who has left. */
    private boolean defenderGone(Floor floor) {
        return slideMetresPerSecond == 0 && floor.mover(defender).velocity().length() > GONE_METRES_PER_SECOND;
    }

    /** Comes up in front of the defender first, then steps in. */
    private boolean atHand(Floor floor, Mover self) {
        atHand |= aim.plus(standOff(floor)).distanceTo(self.position()) < 0.2 || aim.distanceTo(self.position()) < 0.3;
        return atHand;
    }

    private FloorVector standOff(Floor floor) {
        return defendersWay(floor).times(STAND_OFF_METRES);
    }

    /** All but the defender at whose side the target lies, once that side is reached. */
    private List<Mover> inTheWay(Floor floor, Mover self, FloorVector target) {
        Mover body = floor.mover(defender);
        boolean onThatSide =
                target.distanceTo(self.position()) < body.position().distanceTo(self.position());
        return floor.everyone().stream().filter(m -> m != body || !onThatSide).toList();
    }

    /** Planted; or, with the fault, still sliding after the defender. */
    private FloorVector stay(Floor floor, Mover self) {
        if (slideMetresPerSecond > 0 && floor.time() - setSeconds < SLIDE_SECONDS) {
            FloorVector left = soundSpot(floor).minus(self.position());
            planted = self.position();
            return left.unit().times(Math.min(slideMetresPerSecond, left.length() / 0.1));
        }
        return Steering.arrive(self, planted, FloorVector.ZERO, 0.4);
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
