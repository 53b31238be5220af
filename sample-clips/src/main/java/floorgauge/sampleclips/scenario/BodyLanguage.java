package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.Bodies;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.Mover;
import floorgauge.sampleclips.scene.Action;
import java.util.Optional;

/** What bodies do besides moving: where they look, what their arms do, jumps. */
final class BodyLanguage {

    private static final double RUNNING_METRES_PER_SECOND = 2.4;
    private static final double JUMP_METRES = 0.35;

    private final Floor floor;
    private final BallHandling ball;

    BodyLanguage(Floor floor, BallHandling ball) {
        this.floor = floor;
        this.ball = ball;
    }

    void apply() {
        floor.movers().forEach((role, mover) -> {
            mover.jump(0);
            boolean attacks =
                    !role.defends() || floor.holder().filter(role::equals).isPresent();
            FloorVector look = attacks ? attack(role, mover) : defend(role, mover);
            if (look.length() > 1e-6) {
                mover.turnTowards(look.radians(), Bodies.TICK_SECONDS);
            }
        });
    }

    private FloorVector defend(Role role, Mover mover) {
        boolean runs = mover.velocity().length() > RUNNING_METRES_PER_SECOND;
        mover.act(runs ? Action.MOVE : Action.DEFEND, 0);
        FloorVector toMan = floor.mover(floor.man(role)).position().minus(mover.position());
        if (runs) {
            return mover.velocity().unit().plus(toMan.unit().times(0.6));
        }
        FloorVector toBall = floor.ball().minus(mover.position());
        return toMan.unit().plus(toBall.unit().times(0.8));
    }

    private FloorVector attack(Role role, Mover mover) {
        Optional<Step> act = ball.act();
        if (act.isPresent() && act.orElseThrow().who().equals(role)) {
            return ballAct(act.orElseThrow(), mover);
        }
        if (act.isPresent() && act.orElseThrow().other().filter(role::equals).isPresent()) {
            return receive(act.orElseThrow(), mover);
        }
        if (floor.holder().filter(role::equals).isPresent()) {
            boolean dribbles = ball.kind() == Control.Kind.DRIBBLED;
            mover.act(dribbles ? Action.DRIBBLE : Action.HOLD, 0);
            FloorVector toRim = floor.rim().minus(mover.position()).unit();
            return dribbles ? mover.velocity().times(0.5).plus(toRim) : toRim;
        }
        if (floor.goal(role) instanceof SetScreen screen) {
            return screen(screen, mover);
        }
        boolean runs = mover.velocity().length() > RUNNING_METRES_PER_SECOND;
        mover.act(mover.velocity().length() < 1 ? Action.READY : Action.MOVE, 0);
        FloorVector toBall = floor.ball().minus(mover.position());
        return runs ? mover.velocity().unit().plus(toBall.unit().times(0.3)) : toBall;
    }

    private FloorVector screen(SetScreen screen, Mover mover) {
        FloorVector toDefender = floor.mover(screen.defender()).position().minus(mover.position());
        boolean near = screen.isSet() || toDefender.length() < 1.2;
        mover.act(near ? Action.SCREEN : Action.MOVE, 0);
        if (screen.isSet()) {
            return screen.facing();
        }
        return near ? toDefender : mover.velocity();
    }

    private FloorVector ballAct(Step act, Mover mover) {
        double since = floor.time() - ball.actSeconds();
        switch (act.verb()) {
            case PASS -> {
                mover.act(Action.PASS, since / (BallHandling.WIND_UP_SECONDS + 0.1));
                return floor.mover(act.other().orElseThrow()).position().minus(mover.position());
            }
            case HANDOFF -> {
                mover.act(Action.HAND_OFF, 0);
                return floor.mover(act.other().orElseThrow()).position().minus(mover.position());
            }
            default -> {
                mover.act(
                        since > 2 * BallHandling.SHOT_SECONDS ? Action.READY : Action.SHOOT,
                        since / BallHandling.SHOT_SECONDS);
                mover.jump(jump(since));
                return floor.rim().minus(mover.position());
            }
        }
    }

    /** Off the floor about the release: a parabola from 0.3 s to where gravity brings the body down. */
    private static double jump(double since) {
        double flight = 2 * Math.sqrt(2 * JUMP_METRES / BallCourse.GRAVITY);
        double into = since - 0.3;
        return into <= 0 || into >= flight ? 0 : BallCourse.GRAVITY * into * (flight - into) / 2;
    }

    private FloorVector receive(Step act, Mover mover) {
        FloorVector toPasser = floor.mover(act.who()).position().minus(mover.position());
        double left = ball.arrivalSeconds() - floor.time();
        boolean flying = ball.kind() == Control.Kind.PASS;
        if (flying && left < 0.3) {
            mover.act(Action.CATCH, 1 - left / 0.3);
        } else {
            mover.act(mover.velocity().length() > RUNNING_METRES_PER_SECOND ? Action.MOVE : Action.READY, 0);
        }
        return flying ? toPasser : toPasser.unit().plus(mover.velocity().times(0.4));
    }
}
