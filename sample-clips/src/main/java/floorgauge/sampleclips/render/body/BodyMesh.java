package floorgauge.sampleclips.render.body;

import floorgauge.court.track.Team;
import floorgauge.sampleclips.render.mesh.Mesh;
import floorgauge.sampleclips.render.mesh.MeshBuilder;
import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.render.value.Vec3;
import floorgauge.sampleclips.scene.Person;

/**
 * Skin and clothes around a skeleton, as closed tubes swept along the bones with measured-looking cross-sections. Radii in
 * the tables are metres for an average build at 1.9 m (common practice, by eye from anatomy drawings): place along the part,
 * half width, depth to the front, depth to the back.
 */
public final class BodyMesh {

    private static final double[][] TRUNK = {
        {-0.23, 0.045, 0.045, 0.055},
        {-0.15, 0.125, 0.095, 0.110},
        {-0.05, 0.176, 0.115, 0.138},
        {0.03, 0.186, 0.124, 0.146},
        {0.055, 0.192, 0.132, 0.152},
        {0.06, 0.200, 0.142, 0.158},
        {0.14, 0.192, 0.138, 0.142},
        {0.22, 0.180, 0.130, 0.124},
        {0.32, 0.172, 0.124, 0.114},
        {0.44, 0.172, 0.124, 0.112},
        {0.56, 0.178, 0.128, 0.114},
        {0.68, 0.184, 0.132, 0.116},
        {0.78, 0.188, 0.128, 0.116},
        {0.87, 0.186, 0.114, 0.112},
        {0.94, 0.180, 0.096, 0.104},
        {0.99, 0.172, 0.085, 0.096},
        {1.03, 0.152, 0.075, 0.088},
        {1.065, 0.118, 0.069, 0.081},
        {1.07, 0.114, 0.067, 0.079},
        {1.12, 0.078, 0.062, 0.070},
        {1.20, 0.062, 0.059, 0.064},
        {1.36, 0.058, 0.059, 0.062}
    };
    private static final double[][] LEG = {
        {-0.08, 0.080, 0.082, 0.088},
        {0.10, 0.088, 0.088, 0.092},
        {0.35, 0.084, 0.085, 0.084},
        {0.60, 0.073, 0.077, 0.069},
        {0.82, 0.061, 0.064, 0.056},
        {0.94, 0.056, 0.060, 0.050},
        {1.05, 0.056, 0.059, 0.052},
        {1.16, 0.057, 0.052, 0.064},
        {1.32, 0.063, 0.049, 0.079},
        {1.50, 0.058, 0.046, 0.070},
        {1.66, 0.047, 0.041, 0.053},
        {1.68, 0.050, 0.044, 0.056},
        {1.85, 0.041, 0.040, 0.047},
        {2.04, 0.043, 0.044, 0.050}
    };
    private static final double[][] SHORTS = {
        {-0.22, 0.070, 0.095, 0.110},
        {-0.05, 0.108, 0.110, 0.122},
        {0.15, 0.118, 0.118, 0.126},
        {0.35, 0.120, 0.122, 0.124},
        {0.55, 0.122, 0.124, 0.120},
        {0.72, 0.126, 0.126, 0.120},
        {0.84, 0.128, 0.128, 0.120},
        {0.845, 0.110, 0.110, 0.102},
        {0.78, 0.080, 0.080, 0.075}
    };
    private static final double[][] ARM = {
        {-0.12, 0.036, 0.036, 0.036},
        {-0.03, 0.054, 0.054, 0.054},
        {0.10, 0.061, 0.060, 0.058},
        {0.25, 0.057, 0.056, 0.054},
        {0.50, 0.047, 0.049, 0.046},
        {0.75, 0.042, 0.043, 0.040},
        {0.95, 0.039, 0.040, 0.038},
        {1.10, 0.041, 0.042, 0.040},
        {1.30, 0.042, 0.043, 0.040},
        {1.60, 0.034, 0.034, 0.033},
        {1.85, 0.026, 0.028, 0.027},
        {2.00, 0.024, 0.030, 0.029}
    };
    private static final double[][] HAND = {
        {0.00, 0.026, 0.022, 0.022},
        {0.22, 0.042, 0.019, 0.017},
        {0.45, 0.045, 0.018, 0.015},
        {0.70, 0.040, 0.015, 0.013},
        {0.92, 0.026, 0.011, 0.010},
        {1.00, 0.008, 0.005, 0.005}
    };
    private static final double[][] SHOE = {
        {-0.33, 0.012, 0.030, 0},
        {-0.30, 0.036, 0.075, 0},
        {-0.20, 0.044, 0.115, 0},
        {-0.04, 0.048, 0.130, 0},
        {0.08, 0.048, 0.108, 0},
        {0.26, 0.052, 0.080, 0},
        {0.48, 0.055, 0.060, 0},
        {0.64, 0.047, 0.050, 0},
        {0.72, 0.016, 0.032, 0}
    };
    private static final double[][] HEAD = {
        {-0.52, 0.012, 0.050, 0.010},
        {-0.49, 0.030, 0.074, 0.026},
        {-0.42, 0.046, 0.086, 0.044},
        {-0.30, 0.060, 0.091, 0.064},
        {-0.16, 0.068, 0.093, 0.084},
        {-0.04, 0.073, 0.094, 0.096},
        {0.08, 0.076, 0.095, 0.102},
        {0.20, 0.077, 0.095, 0.104},
        {0.32, 0.071, 0.085, 0.095},
        {0.42, 0.055, 0.064, 0.074},
        {0.48, 0.032, 0.037, 0.044},
        {0.505, 0.004, 0.004, 0.006}
    };
    private static final int TRUNK_SEGMENTS = 24;
    private static final int LIMB_SEGMENTS = 12;
    private static final int HEAD_SEGMENTS = 24;
    private static final int NUMBER_FROM = 9;
    private static final int NUMBER_TO = 15;
    private static final double NUMBER_MIDDLE = 0.68;

    private final MeshBuilder builder = new MeshBuilder();
    private final Person person;
    private final Proportions size;
    private final double girth;
    private final boolean longTrousers;
    private final boolean sleeves;
    private final boolean longHair;
    private final boolean striped;
    private final float[] skin;
    private final float[] lips;
    private final float[] eyes;
    private final float[] hair;
    private final float[] shirt;
    private final float[] shorts;
    private final float[] trim;
    private final float[] shoes;
    private final float[] socks;
    private final float[] rubber = Colour.linear(0xE8E8E4);
    private Mesh mesh;

    public BodyMesh(Person person) {
        this.person = person;
        size = Proportions.of(person);
        girth = size.girth();
        boolean player = person.team() == Team.FIRST || person.team() == Team.SECOND;
        longTrousers = !player;
        long id = Hash.of(person.id(), person.hairRgb());
        sleeves = !player || Hash.unit(Hash.mix(id + 2)) < 0.15;
        longHair = Hash.unit(Hash.mix(id + 3)) < 0.2;
        striped = Hash.unit(Hash.of(person.kit().shirtRgb(), 9)) < 0.5;
        skin = Colour.linear(person.skinRgb());
        lips = scaled(skin, 0.72, 0.55, 0.55);
        eyes = scaled(skin, 0.30, 0.28, 0.28);
        hair = Colour.linear(person.hairRgb());
        shirt = Colour.linear(person.kit().shirtRgb());
        shorts = player || person.team() == Team.OFFICIAL
                ? Colour.linear(person.kit().shortsRgb())
                : Colour.linear(darker(person.kit().shortsRgb()));
        trim = Colour.linear(person.kit().numberRgb());
        shoes = Colour.linear(person.kit().shoesRgb());
        socks = Colour.linear(Hash.unit(Hash.mix(id + 4)) < 0.65 ? 0xE9E9E6 : 0x26262A);
    }

    /** Track suit bottoms go with a kit but are never white. */
    private static int darker(int rgb) {
        int r = rgb >> 16 & 255;
        int g = rgb >> 8 & 255;
        int b = rgb & 255;
        return r + g + b > 420 ? 0x2B3038 : rgb;
    }

    private static float[] scaled(float[] c, double r, double g, double b) {
        return new float[] {(float) (c[0] * r), (float) (c[1] * g), (float) (c[2] * b)};
    }

    /** What stays the same in every pose; known once {@link #pose} has run. */
    public Mesh mesh() {
        return mesh;
    }

    /** Positions of the last pose, 3 a vertex, court frame; overwritten by the next. */
    public float[] points() {
        return builder.points();
    }

    /** Unit normals of the last pose; overwritten by the next. */
    public float[] normals() {
        return builder.normals();
    }

    /** Moves every vertex. */
    public void pose(Skeleton s) {
        builder.restart();
        trunk(s);
        head(s);
        leg(s.leftLeg(), s.pelvisAxes(), 1);
        leg(s.rightLeg(), s.pelvisAxes(), -1);
        shoe(s.leftLeg().end(), s.leftFoot());
        shoe(s.rightLeg().end(), s.rightFoot());
        arm(s.leftArm(), s.chestAxes(), 1);
        arm(s.rightArm(), s.chestAxes(), -1);
        if (mesh == null) {
            mesh = builder.mesh(1);
        }
    }

    private void trunk(Skeleton s) {
        int first = builder.vertexCount();
        builder.tube(TRUNK_SEGMENTS);
        Vec3 middle = s.pelvis().plus(0.45 * size.trunk(), s.pelvisAxes().up());
        for (double[] station : TRUNK) {
            double t = station[0];
            double blend = Performance.smooth((t - 0.15) / 0.6);
            Vec3 side =
                    s.pelvisAxes().left().towards(s.chestAxes().left(), blend).unit();
            Vec3 front =
                    s.pelvisAxes().front().towards(s.chestAxes().front(), blend).unit();
            Vec3 centre = trunkCentre(s, middle, t);
            double sag = sleeves && t > 0.05 && t < 0.6 ? 0.008 : 0;
            double shoulder = t > 0.75 && t < 1.04 ? size.shoulderHalf() / (0.1 * 1.9 * girth) : 1;
            builder.ring(
                    centre,
                    side,
                    front,
                    (station[1] + sag) * girth * shoulder,
                    (station[2] + sag) * girth,
                    (station[3] + sag) * girth,
                    t > 0.1 && t < 1 ? 0.88 : 1);
        }
        wrinkles(first, s);
        builder.closeTube(NUMBER_FROM, NUMBER_TO);
        if (builder.recording()) {
            colourTrunk(first);
        }
    }

    private Vec3 trunkCentre(Skeleton s, Vec3 middle, double t) {
        if (t < 0) {
            return s.pelvis().plus(t * size.trunk(), s.pelvisAxes().up());
        }
        if (t > 1) {
            Vec3 base = s.head().plus(-0.30 * size.head(), s.headAxes().up());
            return s.chest().towards(base, (t - 1) / 0.36);
        }
        Vec3 a = s.pelvis().towards(middle, t / 0.45);
        Vec3 b = middle.towards(s.chest(), (t - 0.45) / 0.55);
        return a.towards(b, Performance.smooth((t - 0.2) / 0.5));
    }

    /** Folds that run round the cloth, each person's own. */
    private void wrinkles(int first, Skeleton s) {
        for (int ring = 5; ring < 14; ring++) {
            for (int k = 0; k < TRUNK_SEGMENTS; k++) {
                double depth = 0.005 * girth * Hash.noise(person.id() * 31L, k * 0.55, ring * 1.3);
                double angle = 2 * Math.PI * k / TRUNK_SEGMENTS;
                int v = first + ring * TRUNK_SEGMENTS + k;
                builder.push(v, s.chestAxes().left(), depth * Math.cos(angle));
                builder.push(v, s.chestAxes().front(), depth * Math.sin(angle));
            }
        }
    }

    private void colourTrunk(int first) {
        for (int ring = 0; ring < TRUNK.length; ring++) {
            double t = TRUNK[ring][0];
            for (int k = 0; k < TRUNK_SEGMENTS; k++) {
                int v = first + ring * TRUNK_SEGMENTS + k;
                double angle = 2 * Math.PI * k / TRUNK_SEGMENTS;
                boolean neckline = t > 1.035 || (t > 0.97 && Math.sin(angle) > 0.75 && Math.abs(Math.cos(angle)) < 0.5);
                boolean armhole = !sleeves && t > 0.75 && t < 1.0 && Math.abs(Math.cos(angle)) > 0.93;
                if (neckline || armhole) {
                    builder.colour(v, skin, 0.03);
                } else if (t >= 0.06) {
                    builder.colour(v, shirt, 0);
                } else {
                    builder.colour(v, shorts, 0);
                }
                double across =
                        0.185 * girth * Math.pow(Math.abs(Math.cos(angle)), 0.88) * Math.signum(Math.cos(angle));
                double right = Math.sin(angle) >= 0 ? across : -across;
                builder.texture(v, right, (t - NUMBER_MIDDLE) * size.trunk());
            }
        }
    }

    private void head(Skeleton s) {
        int first = builder.vertexCount();
        double h = size.head();
        double scale = size.height() / 1.9;
        builder.tube(HEAD_SEGMENTS);
        Axes a = s.headAxes();
        for (double[] station : HEAD) {
            builder.ring(
                    s.head().plus(station[0] * h, a.up()),
                    a.left(),
                    a.front(),
                    station[1] * scale,
                    station[2] * scale,
                    station[3] * scale,
                    0.94);
        }
        for (int ring = 0; ring < HEAD.length; ring++) {
            for (int k = 0; k < HEAD_SEGMENTS; k++) {
                shapeHead(first + ring * HEAD_SEGMENTS + k, HEAD[ring][0], 2 * Math.PI * k / HEAD_SEGMENTS, a, scale);
            }
        }
        builder.closeTube(0, 0);
        if (longHair) {
            tail(s, h, scale);
        }
    }

    private void shapeHead(int v, double up, double angle, Axes a, double scale) {
        double front = Math.sin(angle);
        double side = Math.cos(angle);
        boolean hairy = up > 0.30
                || (up > 0.16 && front < 0.85)
                || (up > -0.08 && front < 0.05)
                || (up > -0.34 && front < -0.45);
        if (hairy) {
            builder.push(v, a.front(), 0.012 * scale * front);
            builder.push(v, a.left(), 0.012 * scale * side);
            builder.push(v, a.up(), up > 0.3 ? 0.012 * scale : 0);
        }
        if (front > 0.97 && up > -0.2 && up < 0.02) {
            builder.push(v, a.front(), (up < -0.1 ? 0.022 : 0.010) * scale);
        }
        if (Math.abs(side) > 0.96 && up > -0.18 && up < 0.1) {
            builder.push(v, a.left(), 0.012 * scale * Math.signum(side));
        }
        if (!builder.recording()) {
            return;
        }
        boolean eye = front > 0.8 && front < 0.97 && up > 0.04 && up < 0.1;
        boolean brow = front > 0.75 && front < 0.97 && up > 0.16 && up < 0.24;
        boolean mouth = front > 0.9 && up > -0.36 && up < -0.25;
        if (hairy || brow) {
            builder.colour(v, hair, 0.03);
        } else if (eye) {
            builder.colour(v, eyes, 0.02);
        } else {
            builder.colour(v, mouth ? lips : skin, 0.035);
        }
    }

    private void tail(Skeleton s, double h, double scale) {
        int first = builder.vertexCount();
        Axes a = s.headAxes();
        builder.tube(8);
        Vec3 root = a.from(s.head(), -0.42 * h, 0, 0.12 * h);
        Vec3 end = a.from(s.head(), -0.62 * h, 0, -0.75 * h);
        double[] radii = {0.008, 0.030, 0.036, 0.028, 0.006};
        for (int i = 0; i < radii.length; i++) {
            Vec3 p = root.towards(end, i / 4.0).plus(-0.02 * Math.sin(Math.PI * i / 4.0), a.front());
            builder.ring(p, a.left(), a.front(), radii[i] * scale, radii[i] * scale, radii[i] * scale, 1);
        }
        builder.closeTube(0, 0);
        for (int v = first; v < builder.vertexCount(); v++) {
            builder.colour(v, hair, 0.03);
        }
    }

    private void leg(Limb leg, Axes pelvis, int side) {
        int first = builder.vertexCount();
        Vec3 lateral = hingeAxis(leg, pelvis.left());
        limbTube(leg, lateral, LEG, longTrousers ? 0.020 : 0);
        if (builder.recording()) {
            for (int v = first; v < builder.vertexCount(); v++) {
                double at = LEG[(v - first) / LIMB_SEGMENTS][0];
                if (longTrousers) {
                    builder.colour(v, shorts, 0);
                } else {
                    builder.colour(v, at > 1.67 ? socks : skin, at > 1.67 ? 0 : 0.03);
                }
            }
        }
        if (longTrousers) {
            return;
        }
        int cloth = builder.vertexCount();
        limbTube(leg, lateral, SHORTS, 0);
        if (builder.recording()) {
            for (int v = cloth; v < builder.vertexCount(); v++) {
                int k = (v - cloth) % LIMB_SEGMENTS;
                boolean stripe = striped && (side > 0 ? k == 0 : k == LIMB_SEGMENTS / 2);
                builder.colour(v, stripe ? trim : shorts, 0);
            }
        }
    }

    /** The axis a limb bends about; the given one where it is straight. */
    private static Vec3 hingeAxis(Limb limb, Vec3 otherwise) {
        Vec3 n = limb.hinge()
                .minus(limb.root())
                .unit()
                .cross(limb.end().minus(limb.hinge()).unit());
        double bend = n.length();
        Vec3 steady = otherwise.times(0.12);
        return bend < 1e-6 ? otherwise : n.plus(steady).unit();
    }

    private void limbTube(Limb limb, Vec3 lateral, double[][] stations, double loose) {
        Vec3 upper = limb.hinge().minus(limb.root());
        Vec3 lower = limb.end().minus(limb.hinge());
        builder.tube(LIMB_SEGMENTS);
        for (double[] station : stations) {
            double t = station[0];
            double bend = Performance.smooth((t - 0.82) / 0.36);
            Vec3 axis = upper.unit().towards(lower.unit(), bend).unit();
            Vec3 side = lateral.squaredTo(axis);
            Vec3 front = axis.cross(side);
            Vec3 centre = t <= 1 ? limb.root().plus(t, upper) : limb.hinge().plus(t - 1, lower);
            builder.ring(
                    centre,
                    side,
                    front,
                    (station[1] + loose) * girth,
                    (station[2] + loose) * girth,
                    (station[3] + loose) * girth,
                    1);
        }
        builder.closeTube(0, 0);
    }

    private void shoe(Vec3 ankle, Axes foot) {
        int first = builder.vertexCount();
        double length = size.foot();
        builder.tube(LIMB_SEGMENTS);
        Vec3 sole = ankle.plus(-size.ankle(), foot.up());
        for (double[] station : SHOE) {
            double half = station[2] / 2 * girth;
            Vec3 centre = foot.from(sole, station[0] * length, 0, half);
            builder.ring(centre, foot.left(), foot.up(), station[1] * girth, half, half, 0.8);
        }
        builder.closeTube(0, 0);
        if (builder.recording()) {
            for (int v = first; v < builder.vertexCount(); v++) {
                double up = Math.sin(2 * Math.PI * ((v - first) % LIMB_SEGMENTS) / LIMB_SEGMENTS);
                builder.colour(v, up < -0.45 ? rubber : shoes, 0.02);
            }
        }
    }

    private void arm(Limb arm, Axes chest, int side) {
        int first = builder.vertexCount();
        limbTube(arm, hingeAxis(arm, chest.left().times(-1)), ARM, 0);
        if (builder.recording()) {
            for (int v = first; v < builder.vertexCount(); v++) {
                double at = ARM[(v - first) / LIMB_SEGMENTS][0];
                boolean cloth = sleeves && at < 0.55;
                builder.colour(v, cloth ? shirt : skin, cloth ? 0 : 0.03);
            }
        }
        if (sleeves) {
            sleeve(arm, chest);
        }
        hand(arm, chest, side);
    }

    private void sleeve(Limb arm, Axes chest) {
        int first = builder.vertexCount();
        double[][] cloth = {
            {-0.15, 0.05, 0.05, 0.05},
            {0.0, 0.063, 0.063, 0.063},
            {0.3, 0.066, 0.066, 0.066},
            {0.62, 0.064, 0.064, 0.064}
        };
        limbTube(arm, hingeAxis(arm, chest.left().times(-1)), cloth, 0);
        for (int v = first; v < builder.vertexCount(); v++) {
            builder.colour(v, shirt, 0);
        }
    }

    private void hand(Limb arm, Axes chest, int side) {
        int first = builder.vertexCount();
        Vec3 along = arm.end().minus(arm.hinge()).unit();
        Vec3 inward = chest.left().times(-side).plus(0.3, chest.front()).squaredTo(along);
        Vec3 wide = along.cross(inward);
        builder.tube(8);
        for (double[] station : HAND) {
            Vec3 centre = arm.end()
                    .plus(station[0] * size.hand(), along)
                    .plus(0.25 * station[0] * station[0] * size.hand(), inward);
            builder.ring(centre, wide, inward, station[1] * girth, station[2] * girth, station[3] * girth, 1);
        }
        builder.closeTube(0, 0);
        for (int v = first; v < builder.vertexCount(); v++) {
            builder.colour(v, skin, 0.03);
        }
    }
}
