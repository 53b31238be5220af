package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.gym.GymLight;
import floorgauge.sampleclips.render.mesh.Mesh;
import java.util.Arrays;

/**
 * The light that leaves a body's vertices: from the lamps above (a wide source, so it wraps round), from the walls, and
 * thrown back warm by the floor. What the body itself holds off from above (chin, arms, shorts) is found on a map of its
 * topmost heights. Used by one thread at once.
 */
final class BodyLight {

    private static final int CELLS = 64;
    private static final double CELL_METRES = 0.035;
    private static final double[][] RINGS = {{0, 0}, {0.06, 6}, {0.15, 8}, {0.28, 6}};
    private static final float[] WALLS = {0.300f, 0.296f, 0.285f};

    private final GymLight gymLight;
    private final float[] bounce;
    private final float[] top = new float[CELLS * CELLS];
    private final double[] offsetX;
    private final double[] offsetY;

    /** @param floor mean reflectance of the floor */
    BodyLight(GymLight gymLight, float[] floor) {
        this.gymLight = gymLight;
        bounce = new float[] {0.52f * floor[0], 0.52f * floor[1], 0.52f * floor[2]};
        int count = 0;
        for (double[] ring : RINGS) {
            count += (int) Math.max(1, ring[1]);
        }
        offsetX = new double[count];
        offsetY = new double[count];
        int i = 0;
        for (double[] ring : RINGS) {
            int n = (int) Math.max(1, ring[1]);
            for (int k = 0; k < n; k++) {
                double angle = 2 * Math.PI * (k + 0.5 * (i % 2)) / n;
                offsetX[i] = ring[0] * Math.cos(angle);
                offsetY[i++] = ring[0] * Math.sin(angle);
            }
        }
    }

    /**
     * @param points court frame, 3 a vertex
     * @param normals unit, 3 a vertex
     * @param light receives the light, 3 a vertex
     * @param ownShade whether the mesh may shade itself from above
     */
    void shade(Mesh mesh, float[] points, float[] normals, double[] eye, boolean ownShade, float[] light) {
        double cx = points[0];
        double cy = points[1];
        if (ownShade) {
            map(mesh.vertexCount(), points, cx, cy);
        }
        double strength = gymLight.onFloor(cx, cy);
        double pull = 0.05 * strength;
        double kx = -Math.signum(cx) * Math.min(0.55, Math.abs(cx) * pull);
        double ky = -Math.signum(cy) * Math.min(0.55, Math.abs(cy) * pull) + 0.12;
        double kz = Math.sqrt(Math.max(0.2, 1 - kx * kx - ky * ky));
        for (int v = 0; v < mesh.vertexCount(); v++) {
            int i = 3 * v;
            double nz = normals[i + 2];
            double seen = ownShade ? sky(points[i], points[i + 1], points[i + 2], cx, cy) : 1;
            double wrap = Math.max(0, 0.55 + 0.45 * nz);
            double lamps = 0.42 * wrap * wrap;
            double key = 0.40 * Math.max(0, normals[i] * kx + normals[i + 1] * ky + nz * kz);
            double above = strength * seen * (lamps + key);
            double below = 0.5 * (1 - nz) * (0.55 + 0.45 * seen) * Math.min(1, 0.4 + 0.6 * points[i + 2]);
            double around = (0.45 + 0.55 * seen) * (0.8 + 0.2 * nz);
            double shine = mesh.sheen()[v] == 0 ? 0 : mesh.sheen()[v] * seen * gleam(points, normals, i, eye);
            for (int c = 0; c < 3; c++) {
                double arriving = above + WALLS[c] * around + bounce[c] * below * strength;
                light[i + c] = (float) (mesh.reflectance()[i + c] * arriving + shine);
            }
        }
    }

    private void map(int vertices, float[] points, double cx, double cy) {
        Arrays.fill(top, 0);
        for (int v = 0; v < vertices; v++) {
            int c = cell(points[3 * v] - cx);
            int r = cell(points[3 * v + 1] - cy);
            if (c > 0 && r > 0 && c < CELLS - 1 && r < CELLS - 1) {
                int i = r * CELLS + c;
                float z = points[3 * v + 2];
                top[i] = z > top[i] ? z : top[i];
            }
        }
    }

    private static int cell(double metres) {
        return (int) Math.floor(metres / CELL_METRES + CELLS / 2.0);
    }

    private double sky(double x, double y, double z, double cx, double cy) {
        double hidden = 0;
        for (int k = 0; k < offsetX.length; k++) {
            int c = cell(x + offsetX[k] - cx);
            int r = cell(y + offsetY[k] - cy);
            if (c >= 0 && r >= 0 && c < CELLS && r < CELLS) {
                double above = top[r * CELLS + c] - z - 0.05;
                hidden += above <= 0 ? 0 : Math.min(1, above * 4);
            }
        }
        return 1 - 0.72 * hidden / offsetX.length;
    }

    /** Brightness of the lamps in a broad highlight, for an eye at a point. */
    private static double gleam(float[] p, float[] n, int i, double[] eye) {
        double ex = eye[0] - p[i];
        double ey = eye[1] - p[i + 1];
        double ez = eye[2] - p[i + 2];
        double length = Math.sqrt(ex * ex + ey * ey + ez * ez);
        double hx = ex / length;
        double hy = ey / length;
        double hz = ez / length + 1;
        double h = Math.sqrt(hx * hx + hy * hy + hz * hz);
        double facing = Math.max(0, (n[i] * hx + n[i + 1] * hy + n[i + 2] * hz) / h);
        double four = facing * facing * facing * facing;
        return 3 * four * four * four;
    }
}
