package floorgauge.sampleclips.render.gym;

import floorgauge.sampleclips.render.value.Clamp;

/**
 * Rows of flat lamps under a ceiling, and the light they send down: each lamp gives a floor point cos2 / d2 (a small flat
 * lamp facing a parallel floor), and walls and ceiling add a share that is the same everywhere.
 */
public final class GymLight {

    /** Share of the light on the floor that comes from walls and ceiling, not straight from a lamp. */
    public static final double AMBIENT_SHARE = 0.35;

    private static final double GRID_METRES = 0.5;

    private final double height;
    private final double[] lampX;
    private final double[] lampY;
    private final double lampLength;
    private final double lampWidth;
    private final double scale;
    private final float[] grid;
    private final int columns;
    private final int rows;
    private final double originX;
    private final double originY;

    /**
     * @param height of the lamps above the floor, metres
     * @param halfLength lamps stand within this distance of the centre along x
     * @param halfWidth the same along y
     * @param alongCount lamps in a row along x
     * @param acrossCount rows
     */
    public GymLight(double height, double halfLength, double halfWidth, int alongCount, int acrossCount) {
        this.height = height;
        lampLength = 1.2;
        lampWidth = 0.35;
        lampX = spread(halfLength, alongCount);
        lampY = spread(halfWidth, acrossCount);
        scale = 1 / direct(0, 0, 0, 1);
        originX = -halfLength - 3;
        originY = -halfWidth - 3;
        columns = (int) Math.ceil(-2 * originX / GRID_METRES) + 2;
        rows = (int) Math.ceil(-2 * originY / GRID_METRES) + 2;
        grid = new float[columns * rows];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                double x = originX + c * GRID_METRES;
                double y = originY + r * GRID_METRES;
                grid[r * columns + c] = (float) (AMBIENT_SHARE + (1 - AMBIENT_SHARE) * direct(x, y, 0, scale));
            }
        }
    }

    private static double[] spread(double half, int count) {
        double[] out = new double[count];
        for (int i = 0; i < count; i++) {
            out[i] = -half + (2 * i + 1) * half / count;
        }
        return out;
    }

    private double direct(double x, double y, double z, double factor) {
        double sum = 0;
        for (double ly : lampY) {
            for (double lx : lampX) {
                sum += lamp(lx - x, ly - y, height - z);
            }
        }
        return sum * factor;
    }

    private static double lamp(double dx, double dy, double h) {
        double d2 = dx * dx + dy * dy + h * h;
        return h * h / (d2 * d2);
    }

    public int lampCount() {
        return lampX.length * lampY.length;
    }

    public double lampX(int lamp) {
        return lampX[lamp % lampX.length];
    }

    public double lampY(int lamp) {
        return lampY[lamp / lampX.length];
    }

    public double heightMetres() {
        return height;
    }

    /** A lamp's share of the light on the floor at the middle of the room, for a floor point. */
    public double shareOfLamp(int lamp, double x, double y) {
        return (1 - AMBIENT_SHARE) * scale * lamp(lampX(lamp) - x, lampY(lamp) - y, height);
    }

    /** Light on the floor, about 1. */
    public double onFloor(double x, double y) {
        double gx = Clamp.from0((x - originX) / GRID_METRES, columns - 1.001);
        double gy = Clamp.from0((y - originY) / GRID_METRES, rows - 1.001);
        int c = (int) gx;
        int r = (int) gy;
        double fx = gx - c;
        double fy = gy - r;
        int i = r * columns + c;
        return (grid[i] * (1 - fx) + grid[i + 1] * fx) * (1 - fy)
                + (grid[i + columns] * (1 - fx) + grid[i + columns + 1] * fx) * fy;
    }

    /**
     * How much of a lamp a spread-out ray sees that meets the ceiling at a point: 1 on a lamp, falling off over {@code
     * blurMetres}.
     */
    public double lampSeen(double x, double y, double blurMetres) {
        double stepX = lampX.length > 1 ? lampX[1] - lampX[0] : 1e9;
        double stepY = lampY.length > 1 ? lampY[1] - lampY[0] : 1e9;
        double dx = x - nearest(lampX, stepX, x);
        double dy = y - nearest(lampY, stepY, y);
        return box(dx, lampLength / 2, blurMetres) * box(dy, lampWidth / 2, blurMetres);
    }

    private static double nearest(double[] at, double step, double x) {
        int i = (int) Math.round((x - at[0]) / step);
        return at[Math.max(0, Math.min(at.length - 1, i))];
    }

    /** A box of a half width, blurred: the share of t - b to t + b that lies in it. */
    private static double box(double t, double half, double b) {
        double overlap = Math.min(t + b, half) - Math.max(t - b, -half);
        return overlap <= 0 ? 0 : overlap / (2 * b);
    }
}
