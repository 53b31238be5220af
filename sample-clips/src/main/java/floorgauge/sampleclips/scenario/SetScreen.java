package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.movement.Steering;
import java.util.Optional;

/**
 * Goes to a defender's body, on the side to which the user of the screen will go, and plants there; or, with a fault, stands
 * beside it, or never comes to rest.
 */
final class SetScreen implements Goal {

    /** Between the envelopes of the screener and the defender when the screen is set. */
    private static final double GAP_METRES = 0.06;

    private static final double LOOKAHEAD_METRES = 1.2;
    private static final double THERE_METRES = 0.1;
    private static final double STILL_METRES_PER_SECOND = 0.3;
    private static final double PATIENCE_SECONDS = 3.5;
    private static final double SLIDE_IN_SECONDS = 0.6;
    private static final double SLIDE_SECONDS = 2.0;
    private static final double PLANTED_YIELD = 0.03;

    private final Role user;
    private final Role defender;
    private final FloorVector toward;
    private final Optional<FloorVector> spot;
    private final Optional<FloorVector> facing;
    private final double pace;
    private final double missMetres;
    private final double slideMetresPerSecond;
    private double startSeconds = -1;
    private double setSeconds = -1;
    private FloorVector planted = FloorVector.ZERO;
    private FloorVector intended = FloorVector.ZERO;

    SetScreen(
            Role user,
            Role defender,
            FloorVector toward,
            Optional<FloorVector> spot,
            Optional<FloorVector> facing,
            double pace,
            double missMetres,
            double slideMetresPerSecond) {
        this.user = user;
        this.defender = defender;
        this.toward = toward;
        this.spot = spot;
        this.facing = facing;
        this.pace = pace;
        this.missMetres = missMetres;
        this.slideMetresPerSecond = slideMetresPerSecond;
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

    @Override
    public boolean reached() {
        return isSet();
    }

    @Override
    public FloorVector wish(Floor floor, Mover self) {
        if (startSeconds < 0) {
            startSeconds = floor.time();
        }
        if (isSet()) {
            return stay(floor, self);
        }
        FloorVector sound = soundSpot(floor);
        FloorVector target = sound.plus(miss(floor));
        FloorVector matched =
                spot.isPresent() ? FloorVector.ZERO : floor.mover(defender).velocity();
        boolean there = target.distanceTo(self.position()) < THERE_METRES
                && self.velocity().length() < STILL_METRES_PER_SECOND;
        boolean slidesIn = slideMetresPerSecond > 0
                && target.distanceTo(self.position()) < THERE_METRES + SLIDE_IN_SECONDS * slideMetresPerSecond;
        if (there || slidesIn || floor.time() - startSeconds > PATIENCE_SECONDS) {
            setSeconds = floor.time();
            planted = self.position();
            intended = missMetres > 0 || slideMetresPerSecond > 0 ? sound : planted;
            self.yielding(slideMetresPerSecond > 0 ? 1 : PLANTED_YIELD);
        }
        FloorVector wished = Steering.arrive(self, target, matched, pace);
        return Steering.around(self, wished, floor.everyone(), LOOKAHEAD_METRES, 0);
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
                () -> body.plus(toward.minus(body).unit().times(2 * HumanLimits.BODY_RADIUS_METRES + GAP_METRES)));
    }

    /** The fault's shift: across the defender's way, to the side that the user does not take. */
    private FloorVector miss(Floor floor) {
        if (missMetres == 0) {
            return FloorVector.ZERO;
        }
        FloorVector body = floor.mover(defender).position();
        FloorVector across = toward.minus(body).unit().left();
        double side = across.dot(floor.mover(user).position().minus(body)) >= 0 ? -1 : 1;
        return across.times(side * (2 * HumanLimits.BODY_RADIUS_METRES + missMetres));
    }
}
