package floorgauge.sampleclips.render.body;

import floorgauge.sampleclips.movement.Gait;
import floorgauge.sampleclips.render.value.Vec3;
import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.PersonState;
import java.util.Optional;

/** Turns a person's state into a skeleton: hips over the planted feet, a leant and twisted trunk, arms that swing or reach. */
public final class Poser {

    private static final double BALL_RADIUS = 0.12;

    /** Of the height: the hips of one who walks or runs are lower, for the legs reach ahead and behind (from memory). */
    private static final double STRIDING_SINK = 0.033;

    private final Performance performance;
    private final Proportions size;

    public Poser(Performance performance) {
        this.performance = performance;
        this.size = performance.proportions();
    }

    /** @param ball where the ball is, if there is one */
    public Skeleton pose(double timeSeconds, PersonState state, Optional<BallState> ball) {
        Style style = performance.style(timeSeconds);
        double speed = performance.speed(timeSeconds);
        double phase = state.gaitPhaseRadians();
        double run = Performance.smooth((speed - 0.4) / 3.5);
        Axes upright = Axes.facing(state.facingRadians());

        double sink = (style.crouch() + STRIDING_SINK * Performance.smooth(speed / 1.5)) * size.height();
        double bob = 0.03 * run * Math.cos(2 * phase - 2 * Math.PI * (Gait.swingShare(speed) - 0.5));
        Vec3 pelvis = new Vec3(
                state.position().xMetres(),
                state.position().yMetres(),
                Math.max(0.35, size.hip() - sink + bob + state.jumpMetres()));
        double forward = forward(state);
        double lean = style.lean() + 0.05 * run * Math.min(4, forward) + (sitting(state) ? -0.1 : 0);
        double turn = style.swing() * (0.04 + 0.14 * run) * Math.cos(phase);
        Axes pelvisAxes = upright.twisted(-turn * 0.5).leant(lean * 0.45);
        Axes chestAxes = upright.twisted(turn).leant(lean);
        Vec3 chest = pelvis.plus(0.45 * size.trunk(), pelvisAxes.up()).plus(0.55 * size.trunk(), chestAxes.up());

        double look = look(state, chest, ball);
        Axes headAxes = upright.twisted(look).leant(lean * 0.3 + 0.05);
        Vec3 neck = chest.plus(0.052 * size.height(), chestAxes.up());
        Vec3 head = headAxes.from(neck, 0.020 * size.height(), 0, 0.072 * size.height());

        Foot lf = performance.leftFoot(timeSeconds);
        Foot rf = performance.rightFoot(timeSeconds);
        Limb leftLeg = leg(pelvis, pelvisAxes, upright, lf, 1);
        Limb rightLeg = leg(pelvis, pelvisAxes, upright, rf, -1);
        return new Skeleton(
                size,
                pelvis,
                pelvisAxes,
                chest,
                chestAxes,
                head,
                headAxes,
                arm(timeSeconds, state, style, speed, chest, chestAxes, ball, 1),
                arm(timeSeconds, state, style, speed, chest, chestAxes, ball, -1),
                leftLeg,
                rightLeg,
                shoe(lf, leftLeg),
                shoe(rf, rightLeg));
    }

    private static boolean sitting(PersonState state) {
        return state.action() == Action.SIT;
    }

    private static double forward(PersonState s) {
        return s.velocityXMetresPerSecond() * Math.cos(s.facingRadians())
                + s.velocityYMetresPerSecond() * Math.sin(s.facingRadians());
    }

    /** Heads turn to the ball, as far as a neck turns. */
    private static double look(PersonState state, Vec3 chest, Optional<BallState> ball) {
        if (ball.isEmpty()) {
            return 0;
        }
        double dx = ball.get().xMetres() - chest.x();
        double dy = ball.get().yMetres() - chest.y();
        double off = Math.IEEEremainder(Math.atan2(dy, dx) - state.facingRadians(), 2 * Math.PI);
        double near = Performance.smooth((Math.hypot(dx, dy) - 0.4) / 0.8);
        double back = Performance.smooth((Math.PI - Math.abs(off)) / 0.9);
        return near * back * Math.max(-1.1, Math.min(1.1, off * 0.8));
    }

    private Limb leg(Vec3 pelvis, Axes pelvisAxes, Axes upright, Foot foot, int side) {
        Vec3 hip = pelvis.plus(side * size.hipHalf(), pelvisAxes.left());
        Axes toes = Axes.facing(foot.yaw());
        Vec3 pole = upright.front()
                .plus(toes.front())
                .plus(0.25 * side, upright.left())
                .unit();
        Vec3 ankle = ankle(hip, toes, foot);
        return Limb.reach(hip, ankle, size.thigh(), size.shank(), pole);
    }

    /**
     * The ankle over a foot; where the leg is too short for one that is behind, the heel comes up and the ankle turns about
     * the ball of the foot. One that swings ahead is only as far ahead as the leg reaches.
     */
    private Vec3 ankle(Vec3 hip, Axes toes, Foot foot) {
        double longest = (size.thigh() + size.shank()) * 0.995;
        double low = foot.pitch();
        Vec3 best = ankleAt(toes, foot, low);
        Vec3 leg = best.minus(hip);
        boolean swingsAhead = foot.sole() > 0 && leg.dot(toes.front()) > 0;
        if (swingsAhead || leg.length() <= longest) {
            return best;
        }
        double high = 1.15;
        for (int i = 0; i < 12; i++) {
            double middle = (low + high) / 2;
            if (ankleAt(toes, foot, middle).minus(hip).length() <= longest) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return ankleAt(toes, foot, high);
    }

    private Vec3 ankleAt(Axes toes, Foot foot, double pitch) {
        double ball = 0.10 * size.height();
        Vec3 pivot = new Vec3(foot.x(), foot.y(), foot.sole()).plus(ball, toes.front());
        double c = Math.cos(pitch);
        double s = Math.sin(pitch);
        return pivot.plus(-ball * c + size.ankle() * s, toes.front()).plus(ball * s + size.ankle() * c, Vec3.UP);
    }

    /** The shoe's directions follow from where the ankle stands over the ball of the foot. */
    private Axes shoe(Foot foot, Limb leg) {
        Axes toes = Axes.facing(foot.yaw());
        double ball = 0.10 * size.height();
        Vec3 pivot = new Vec3(foot.x(), foot.y(), foot.sole()).plus(ball, toes.front());
        Vec3 back = leg.end().minus(pivot);
        double pitch = Math.atan2(back.z(), -back.dot(toes.front())) - Math.atan2(size.ankle(), ball);
        return toes.leant(Math.max(-0.3, Math.min(1.3, pitch)));
    }

    private Limb arm(
            double time,
            PersonState state,
            Style style,
            double speed,
            Vec3 chest,
            Axes axes,
            Optional<BallState> ball,
            int side) {
        double raise = Math.max(0, style.up()) * 0.02 * size.height();
        Vec3 shoulder = axes.from(chest, 0, side * size.shoulderHalf(), -0.012 * size.height() + raise);
        double length = size.upperArm() + size.forearm();
        Vec3 still = axes.from(shoulder, style.front() * length, side * style.out() * length, style.up() * length);
        Vec3 swung = swung(shoulder, axes, state.gaitPhaseRadians(), speed, side);
        Vec3 wrist = still.towards(swung, style.swing());
        if (ball.isPresent()) {
            wrist = toBall(wrist, shoulder, state, axes, ball.get(), side);
        }
        double shake = 0.006 * Math.sin(time * 2.1 + side + state.person().id());
        wrist = wrist.plus(shake, axes.up());
        Vec3 pole = axes.from(new Vec3(0, 0, 0), -0.35, side * 0.55, -0.75);
        return Limb.reach(shoulder, wrist, size.upperArm(), size.forearm(), pole);
    }

    private Vec3 swung(Vec3 shoulder, Axes axes, double phase, double speed, int side) {
        double amplitude = Math.min(0.85, 0.06 + 0.16 * speed);
        double flex = Math.min(1.55, 0.22 + 0.34 * speed);
        double legForward = Math.cos(phase - 0.9 * Math.PI);
        double a = -side * amplitude * legForward - 0.25 * Math.min(1, speed / 4);
        Vec3 elbow = axes.from(
                shoulder, size.upperArm() * Math.sin(a), side * 0.11 * size.upperArm(), -size.upperArm() * Math.cos(a));
        return axes.from(
                elbow,
                size.forearm() * Math.sin(a + flex),
                -side * 0.03 * size.forearm() * speed,
                -size.forearm() * Math.cos(a + flex));
    }

    private Vec3 toBall(Vec3 free, Vec3 shoulder, PersonState state, Axes axes, BallState ball, int side) {
        boolean mine = ball.controlledBy().isPresent()
                && ball.controlledBy().getAsInt() == state.person().id();
        Vec3 at = new Vec3(ball.xMetres(), ball.yMetres(), ball.zMetres());
        double reach = size.upperArm() + size.forearm() + size.hand();
        double near = Performance.smooth((reach * 1.25 - at.minus(shoulder).length()) / (0.35 * reach));
        double lateral = at.minus(shoulder).dot(axes.left()) * side + size.shoulderHalf();
        return switch (state.action()) {
            case DRIBBLE -> {
                if (!mine || lateral <= 0) {
                    yield free;
                }
                double z = Math.max(at.z() + BALL_RADIUS + 0.03, 0.44 * size.height());
                Vec3 over = new Vec3(at.x(), at.y(), z).plus(-0.7 * size.hand(), axes.front());
                yield free.towards(over, 0.9);
            }
            case HAND_OFF -> free.towards(grip(at, axes, side), lateral > 0 ? near : 0.25 * near);
            case HOLD, PASS, CATCH, SHOOT -> free.towards(grip(at, axes, side), mine ? near : 0.8 * near);
            default -> mine ? free.towards(grip(at, axes, side), near) : free;
        };
    }

    private Vec3 grip(Vec3 ball, Axes axes, int side) {
        return ball.plus(side * (BALL_RADIUS + 0.01), axes.left())
                .plus(-0.55 * size.hand(), axes.front())
                .plus(-0.02, Vec3.UP);
    }
}
