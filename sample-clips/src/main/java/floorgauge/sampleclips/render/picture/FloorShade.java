package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.gym.GymLight;
import java.util.Arrays;
import java.util.List;

/**
 * How much of its light each floor point keeps, on a grid. A body is a set of balls; every strong lamp casts each ball's
 * blurred disc, the darkest disc of a body counts for that lamp, and bodies multiply. Light from all round is held off by
 * the balls' share of the sky over the point: the sum of r2 h / d3 (form factor of a ball seen from a plane).
 */
final class FloorShade {

    private static final double CELL_METRES = 0.03;
    private static final double LEAST_SHARE = 0.012;
    private static final double LAMP_SIZE = 0.6;
    private static final double AROUND_REACH = 0.9;

    private final GymLight light;
    private final int columns;
    private final int rows;
    private final double originX;
    private final double originY;
    private final float[] lamps;
    private final float[] around;
    private final float[] patch;

    FloorShade(GymLight light, double halfLength, double halfWidth) {
        this.light = light;
        originX = -halfLength;
        originY = -halfWidth;
        columns = (int) Math.ceil(2 * halfLength / CELL_METRES) + 1;
        rows = (int) Math.ceil(2 * halfWidth / CELL_METRES) + 1;
        lamps = new float[columns * rows];
        around = new float[columns * rows];
        patch = new float[columns * rows];
    }

    /**
     * Casts the shade of all bodies.
     *
     * @param bodies for each, balls as x, y, z, radius one after the other
     */
    void cast(List<float[]> bodies) {
        Arrays.fill(lamps, 1);
        Arrays.fill(around, 0);
        for (float[] balls : bodies) {
            for (int lamp = 0; lamp < light.lampCount(); lamp++) {
                double share = light.shareOfLamp(lamp, balls[0], balls[1]) / light.onFloor(balls[0], balls[1]);
                if (share >= LEAST_SHARE) {
                    castLamp(balls, lamp, share);
                }
            }
            for (int i = 0; i < balls.length; i += 4) {
                holdOff(balls, i);
            }
        }
    }

    private void castLamp(float[] balls, int lamp, double share) {
        int[] box = {columns, -1, rows, -1};
        for (int i = 0; i < balls.length; i += 4) {
            disc(balls, i, lamp, box);
        }
        for (int r = Math.max(0, box[2]); r <= Math.min(rows - 1, box[3]); r++) {
            for (int c = Math.max(0, box[0]); c <= Math.min(columns - 1, box[1]); c++) {
                int at = r * columns + c;
                if (patch[at] > 0) {
                    lamps[at] *= (float) (1 - share * patch[at]);
                    patch[at] = 0;
                }
            }
        }
    }

    private void disc(float[] balls, int i, int lamp, int[] box) {
        double top = light.heightMetres();
        double z = Math.min(balls[i + 2], top - 1);
        double grow = top / (top - z);
        double x = light.lampX(lamp) + (balls[i] - light.lampX(lamp)) * grow;
        double y = light.lampY(lamp) + (balls[i + 1] - light.lampY(lamp)) * grow;
        double slant = Math.hypot(balls[i] - light.lampX(lamp), balls[i + 1] - light.lampY(lamp)) / (top - z);
        if (slant > 1.6) {
            return;
        }
        double radius = balls[i + 3] * grow;
        double blur = 0.02 + LAMP_SIZE * z / (top - z);
        double strength = Math.min(1, Math.pow(radius / (radius + 0.5 * blur), 1.5));
        double reach = radius + blur;
        int c0 = column(x - reach);
        int c1 = column(x + reach);
        int r0 = row(y - reach);
        int r1 = row(y + reach);
        box[0] = Math.min(box[0], c0);
        box[1] = Math.max(box[1], c1);
        box[2] = Math.min(box[2], r0);
        box[3] = Math.max(box[3], r1);
        double inner = Math.max(0, radius - blur);
        for (int r = Math.max(0, r0); r <= Math.min(rows - 1, r1); r++) {
            double dy = originY + r * CELL_METRES - y;
            for (int c = Math.max(0, c0); c <= Math.min(columns - 1, c1); c++) {
                double dx = originX + c * CELL_METRES - x;
                double d = Math.sqrt(dx * dx + dy * dy);
                if (d < reach) {
                    double t = d <= inner ? 1 : (reach - d) / (reach - inner);
                    float dark = (float) (strength * t * t * (3 - 2 * t));
                    int at = r * columns + c;
                    patch[at] = Math.max(patch[at], dark);
                }
            }
        }
    }

    private void holdOff(float[] balls, int i) {
        double h = Math.max(0.02, balls[i + 2]);
        double radius = balls[i + 3];
        double reach = Math.min(AROUND_REACH, 0.15 + 3.5 * Math.sqrt(radius * h));
        int c0 = Math.max(0, column(balls[i] - reach));
        int c1 = Math.min(columns - 1, column(balls[i] + reach));
        int r0 = Math.max(0, row(balls[i + 1] - reach));
        int r1 = Math.min(rows - 1, row(balls[i + 1] + reach));
        for (int r = r0; r <= r1; r++) {
            double dy = originY + r * CELL_METRES - balls[i + 1];
            for (int c = c0; c <= c1; c++) {
                double dx = originX + c * CELL_METRES - balls[i];
                double flat = dx * dx + dy * dy;
                if (flat < reach * reach) {
                    double d2 = Math.max(radius * radius, flat + h * h);
                    double fade = 1 - flat / (reach * reach);
                    around[r * columns + c] += (float) (fade * radius * radius * h / (d2 * Math.sqrt(d2)));
                }
            }
        }
    }

    private int column(double x) {
        return (int) Math.floor((x - originX) / CELL_METRES);
    }

    private int row(double y) {
        return (int) Math.floor((y - originY) / CELL_METRES);
    }

    /** The share of its light that a floor point keeps, 0 to 1. */
    double kept(double x, double y) {
        double gx = Math.max(0, Math.min(columns - 1.01, (x - originX) / CELL_METRES));
        double gy = Math.max(0, Math.min(rows - 1.01, (y - originY) / CELL_METRES));
        int c = (int) gx;
        int r = (int) gy;
        double fx = gx - c;
        double fy = gy - r;
        int i = r * columns + c;
        return (kept(i) * (1 - fx) + kept(i + 1) * fx) * (1 - fy)
                + (kept(i + columns) * (1 - fx) + kept(i + columns + 1) * fx) * fy;
    }

    private double kept(int i) {
        double ambient = GymLight.AMBIENT_SHARE;
        double sky = 1 - Math.min(0.92, 2.2 * around[i]);
        return Math.max(0, lamps[i] - ambient + ambient * sky * (0.4 + 0.6 * lamps[i]));
    }
}
