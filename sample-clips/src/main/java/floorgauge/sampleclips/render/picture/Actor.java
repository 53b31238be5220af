package floorgauge.sampleclips.render.picture;

import floorgauge.court.track.Team;
import floorgauge.sampleclips.render.body.BodyMesh;
import floorgauge.sampleclips.render.body.Limb;
import floorgauge.sampleclips.render.body.Performance;
import floorgauge.sampleclips.render.body.Poser;
import floorgauge.sampleclips.render.body.Skeleton;
import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Vec3;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import java.util.List;
import java.util.Optional;

/** One person of a scene with a body, ready to be posed for an exposure. */
final class Actor {

    private static final int BALLS = 28;

    final Person person;
    final Drawable drawable;
    private final Poser poser;
    private final BodyMesh body;
    private Skeleton skeleton;

    Actor(Person person, List<PersonState> course, int samples) {
        this.person = person;
        poser = new Poser(new Performance(course));
        body = new BodyMesh(person);
        body.pose(poser.pose(0, course.get(0), Optional.empty()));
        boolean player = person.team() == Team.FIRST || person.team() == Team.SECOND;
        JerseyNumber number = player && person.jerseyNumber() >= 0
                ? new JerseyNumber(
                        person.jerseyNumber(), Colour.linear(person.kit().numberRgb()))
                : null;
        drawable = new Drawable(person.id(), body.mesh(), number, samples);
    }

    /** The body in the middle of the exposure. */
    Skeleton skeleton() {
        return skeleton;
    }

    /** Poses the body when the shutter opens, at the middle and when it closes; lights it at the middle. */
    void expose(double[] times, PersonState[] states, List<Optional<BallState>> balls, double[] eye, BodyLight light) {
        body.pose(poser.pose(times[0], states[0], balls.get(0)));
        System.arraycopy(body.points(), 0, drawable.open, 0, drawable.open.length);
        body.pose(poser.pose(times[2], states[2], balls.get(2)));
        System.arraycopy(body.points(), 0, drawable.close, 0, drawable.close.length);
        skeleton = poser.pose(times[1], states[1], balls.get(1));
        body.pose(skeleton);
        light.shade(body.mesh(), body.points(), body.normals(), eye, true, drawable.light);
    }

    /** The body as balls (x, y, z, radius) for the shade on the floor. */
    float[] balls() {
        Skeleton s = skeleton;
        double g = s.proportions().girth();
        float[] out = new float[4 * BALLS];
        int i = 0;
        i = ball(out, i, s.pelvis(), 0.16 * g);
        i = ball(out, i, s.pelvis().towards(s.chest(), 0.4), 0.14 * g);
        i = ball(out, i, s.pelvis().towards(s.chest(), 0.8), 0.155 * g);
        i = ball(out, i, s.head(), 0.11);
        i = ball(out, i, s.chest().plus(0.09, s.chestAxes().left()), 0.10 * g);
        i = ball(out, i, s.chest().plus(-0.09, s.chestAxes().left()), 0.10 * g);
        for (Limb leg : List.of(s.leftLeg(), s.rightLeg())) {
            i = ball(out, i, leg.root().towards(leg.hinge(), 0.35), 0.095 * g);
            i = ball(out, i, leg.root().towards(leg.hinge(), 0.8), 0.075 * g);
            i = ball(out, i, leg.hinge().towards(leg.end(), 0.3), 0.06 * g);
            i = ball(out, i, leg.hinge().towards(leg.end(), 0.7), 0.05 * g);
        }
        i = shoe(out, i, s.leftLeg().end(), s.leftFoot().front());
        i = shoe(out, i, s.rightLeg().end(), s.rightFoot().front());
        for (Limb arm : List.of(s.leftArm(), s.rightArm())) {
            i = ball(out, i, arm.root().towards(arm.hinge(), 0.5), 0.05 * g);
            i = ball(out, i, arm.hinge(), 0.045 * g);
            i = ball(out, i, arm.hinge().towards(arm.end(), 0.5), 0.04 * g);
            i = ball(out, i, arm.end(), 0.045 * g);
        }
        if (i != out.length) {
            throw new IllegalStateException("a body is " + out.length / 4 + " balls, not " + i / 4);
        }
        return out;
    }

    private static int shoe(float[] out, int i, Vec3 ankle, Vec3 front) {
        int n = ball(out, i, ankle.plus(-0.03, front).plus(-0.035, Vec3.UP), 0.045);
        n = ball(out, n, ankle.plus(0.06, front).plus(-0.04, Vec3.UP), 0.045);
        return ball(out, n, ankle.plus(0.15, front).plus(-0.045, Vec3.UP), 0.04);
    }

    private static int ball(float[] out, int i, Vec3 p, double radius) {
        out[i] = (float) p.x();
        out[i + 1] = (float) p.y();
        out[i + 2] = (float) p.z();
        out[i + 3] = (float) radius;
        return i + 4;
    }
}
