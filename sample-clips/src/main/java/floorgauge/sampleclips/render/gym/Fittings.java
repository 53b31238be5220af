package floorgauge.sampleclips.render.gym;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.sampleclips.render.mesh.MeshBuilder;
import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * What stands and hangs in the gym: boards 1.80 x 1.05 m with their lower edge 2.90 m up and a rim 0.45 m across inside
 * (FIBA Basketball Equipment, from memory), nets, arms to the wall, and benches.
 */
public final class Fittings {

    private static final double BOARD_WIDTH = 1.80;
    private static final double BOARD_HEIGHT = 1.05;
    private static final double BOARD_LOW = 2.90;
    private static final double RIM_RADIUS = 0.225 + 0.009;
    private static final double NET_LENGTH = 0.42;

    private static final float[] WHITE = Colour.linear(0xF2F2F0);
    private static final float[] GLASS = Colour.linear(0xC9D3D6);
    private static final float[] ORANGE = Colour.linear(0xD9501E);
    private static final float[] STEEL = Colour.linear(0x53575C);
    private static final float[] BENCH = Colour.linear(0x9A7A50);

    private Fittings() {}

    /** A built mesh and how solid it looks, 0 to 1. */
    public record Fitting(MeshBuilder builder, double veil) {}

    public static List<Fitting> of(Gym gym) {
        List<Fitting> out = new ArrayList<>();
        for (CourtEnd end : CourtEnd.values()) {
            basket(gym, end, out);
        }
        MeshBuilder benches = new MeshBuilder();
        for (double x : benchPlaces(gym)) {
            bench(benches, x, benchY(gym));
        }
        out.add(new Fitting(benches, 1));
        return out;
    }

    /** Middles of the benches along x; they stand along the side wall with y above 0. */
    public static double[] benchPlaces(Gym gym) {
        double x = gym.rules().lengthMetres() * 0.22;
        return new double[] {-x - 1.3, -x + 1.3, x - 1.3, x + 1.3};
    }

    /** Middle of the benches across. */
    public static double benchY(Gym gym) {
        return gym.rules().widthMetres() / 2 + 2.2;
    }

    private static void basket(Gym gym, CourtEnd end, List<Fitting> out) {
        int s = end.sign();
        double face = s * (gym.rules().lengthMetres() / 2 - gym.rules().boardFromEndLineMetres());
        FloorPoint rim = gym.rules().rim(end);
        MeshBuilder solid = new MeshBuilder();
        MeshBuilder glass = new MeshBuilder();
        glass.box(
                new Vec3(face, -BOARD_WIDTH / 2, BOARD_LOW),
                new Vec3(s * 0.02, 0, 0),
                new Vec3(0, BOARD_WIDTH, 0),
                new Vec3(0, 0, BOARD_HEIGHT),
                GLASS);
        frame(solid, face - s * 0.006, BOARD_WIDTH, BOARD_HEIGHT, BOARD_LOW, 0.05, s);
        frame(solid, face - s * 0.006, 0.59, 0.45, gym.rules().rimHeightMetres(), 0.05, s);
        ring(solid, rim, gym.rules().rimHeightMetres());
        solid.box(
                new Vec3(rim.xMetres() + s * RIM_RADIUS, -0.06, gym.rules().rimHeightMetres() - 0.05),
                new Vec3(face - rim.xMetres() - s * RIM_RADIUS, 0, 0),
                new Vec3(0, 0.12, 0),
                new Vec3(0, 0, 0.05),
                ORANGE);
        arms(solid, face, s, gym.halfLengthMetres());
        out.add(new Fitting(solid, 1));
        out.add(new Fitting(glass, 0.4));
        MeshBuilder net = new MeshBuilder();
        net(net, rim, gym.rules().rimHeightMetres());
        out.add(new Fitting(net, 0.8));
    }

    private static void frame(
            MeshBuilder b, double x, double width, double height, double low, double paint, int sign) {
        Vec3 thick = new Vec3(-sign * 0.008, 0, 0);
        Vec3 wide = new Vec3(0, width, 0);
        Vec3 tall = new Vec3(0, 0, height);
        b.box(new Vec3(x, -width / 2, low), thick, wide, new Vec3(0, 0, paint), WHITE);
        b.box(new Vec3(x, -width / 2, low + height - paint), thick, wide, new Vec3(0, 0, paint), WHITE);
        b.box(new Vec3(x, -width / 2, low), thick, new Vec3(0, paint, 0), tall, WHITE);
        b.box(new Vec3(x, width / 2 - paint, low), thick, new Vec3(0, paint, 0), tall, WHITE);
    }

    private static void ring(MeshBuilder b, FloorPoint rim, double height) {
        int first = b.vertexCount();
        b.tube(6);
        for (int i = 0; i <= 24; i++) {
            double angle = 2 * Math.PI * i / 24;
            Vec3 out = new Vec3(Math.cos(angle), Math.sin(angle), 0);
            Vec3 centre = new Vec3(rim.xMetres(), rim.yMetres(), height).plus(RIM_RADIUS, out);
            b.ring(centre, out, Vec3.UP, 0.010, 0.010, 0.010, 1);
        }
        b.closeTube(0, 0);
        for (int v = first; v < b.vertexCount(); v++) {
            b.colour(v, ORANGE, 0.03);
        }
    }

    private static void net(MeshBuilder b, FloorPoint rim, double height) {
        int cords = 12;
        for (int i = 0; i < cords; i++) {
            for (int turn = -1; turn <= 1; turn += 2) {
                Vec3 before = knot(rim, height, i, 0, turn, cords);
                for (int step = 1; step <= 3; step++) {
                    Vec3 next = knot(rim, height, i, step / 3.0, turn, cords);
                    b.bar(before, next, 0.005, 4, WHITE);
                    before = next;
                }
            }
        }
    }

    private static Vec3 knot(FloorPoint rim, double height, int cord, double down, int turn, int cords) {
        double angle = 2 * Math.PI * (cord + turn * 1.5 * down) / cords;
        double radius = RIM_RADIUS * (1 - 0.42 * Math.sqrt(down));
        return new Vec3(
                rim.xMetres() + radius * Math.cos(angle),
                rim.yMetres() + radius * Math.sin(angle),
                height - NET_LENGTH * down);
    }

    private static void arms(MeshBuilder b, double face, int sign, double halfLength) {
        double wall = sign * halfLength;
        for (double y : new double[] {-0.45, 0.45}) {
            b.bar(new Vec3(face + sign * 0.05, y, 3.05), new Vec3(wall, y * 1.4, 3.3), 0.035, 6, STEEL);
            b.bar(new Vec3(face + sign * 0.05, y, 3.75), new Vec3(wall, y * 1.4, 3.9), 0.035, 6, STEEL);
            b.bar(new Vec3(face + sign * 0.05, y, 3.05), new Vec3(face + sign * 0.05, y, 3.8), 0.03, 6, STEEL);
        }
        b.bar(new Vec3(face + sign * 0.05, -0.45, 3.4), new Vec3(face + sign * 0.05, 0.45, 3.4), 0.03, 6, STEEL);
    }

    private static void bench(MeshBuilder b, double x, double y) {
        b.box(
                new Vec3(x - 1.2, y - 0.16, 0.40),
                new Vec3(2.4, 0, 0),
                new Vec3(0, 0.32, 0),
                new Vec3(0, 0, 0.05),
                BENCH);
        for (double at : new double[] {-1.0, 1.0}) {
            b.box(
                    new Vec3(x + at - 0.03, y - 0.14, 0),
                    new Vec3(0.06, 0, 0),
                    new Vec3(0, 0.28, 0),
                    new Vec3(0, 0, 0.40),
                    STEEL);
        }
    }
}
