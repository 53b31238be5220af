package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.gym.GymLight;
import floorgauge.sampleclips.render.value.Clamp;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How much of its light each floor point keeps, on a grid. A body is a set of balls; every strong lamp casts each ball's
 * blurred disc, the darkest disc of a body counts for that lamp, and bodies multiply. Light from all round is held off by
 * the balls' share of the sky over the point: the sum of r2 h / d3 (form factor of a ball seen from a plane).
 *
 * <p>Strips of the grid are filled at once, each with all that reaches it in the order of the bodies.
 */
final class FloorShade {

    private static final double CELL_METRES = 0.03;
    private static final double LEAST_SHARE = 0.012;
    private static final double LAMP_SIZE = 0.6;
    private static final double AROUND_REACH = 0.9;
    private static final int STRIP_ROWS = 24;

    private final GymLight light;
    private final int columns;
    private final int rows;
    private final double originX;
    private final double originY;
    private final double[] columnX;
    private final float[] lamps;
    private final float[] around;
    private final float[] patch;
    /** What {@link #kept(float, float)} gives at each point of the grid. */
    private final double[] kept;
    /** First and last column of each row that is shaded. */
    private final int[] from;

    private final int[] to;

    FloorShade(GymLight light, double halfLength, double halfWidth) {
        this.light = light;
        originX = -halfLength;
        originY = -halfWidth;
        columns = (int) Math.ceil(2 * halfLength / CELL_METRES) + 1;
        rows = (int) Math.ceil(2 * halfWidth / CELL_METRES) + 1;
        columnX = new double[columns];
        for (int c = 0; c < columns; c++) {
            columnX[c] = originX + c * CELL_METRES;
        }
        lamps = new float[columns * rows];
        around = new float[columns * rows];
        patch = new float[columns * rows];
        kept = new double[columns * rows];
        Arrays.fill(lamps, 1);
        Arrays.fill(kept, kept(1, 0));
        from = new int[rows];
        to = new int[rows];
        Arrays.fill(from, columns);
        Arrays.fill(to, -1);
    }

    /** A rectangle of the grid, with its last column and row. */
    private record Part(int fromColumn, int toColumn, int fromRow, int toRow) {

        Part within(int from, int to) {
            return new Part(fromColumn, toColumn, Math.max(fromRow, from), Math.min(toRow, to));
        }

        Part with(Part other) {
            return new Part(
                    Math.min(fromColumn, other.fromColumn),
                    Math.max(toColumn, other.toColumn),
                    Math.min(fromRow, other.fromRow),
                    Math.max(toRow, other.toRow));
        }
    }

    /** A ball's blurred shadow: {@code strength} dark up to {@code inner} from its middle, nothing from {@code reach} on. */
    private record Disc(double x, double y, double inner, double reach, double strength, Part part) {}

    /** What a lamp that gives a share of the light casts of a body. */
    private record Cast(double share, List<Disc> discs, Part part) {}

    /** A ball that hides a part of the sky from the floor round it. */
    private record Hidden(double x, double y, double height, double radius, double reach, Part part) {}

    /**
     * Casts the shade of all bodies.
     *
     * @param bodies for each, balls as x, y, z, radius one after the other
     */
    void cast(List<float[]> bodies, Parallel parallel) {
        List<Cast> casts = new ArrayList<>();
        List<Hidden> hidden = new ArrayList<>();
        for (float[] balls : bodies) {
            for (int lamp = 0; lamp < light.lampCount(); lamp++) {
                double share = light.shareOfLamp(lamp, balls[0], balls[1]) / light.onFloor(balls[0], balls[1]);
                if (share >= LEAST_SHARE) {
                    addCast(balls, lamp, share, casts);
                }
            }
            for (int i = 0; i < balls.length; i += 4) {
                hidden.add(hidden(balls, i));
            }
        }
        int strips = (rows + STRIP_ROWS - 1) / STRIP_ROWS;
        parallel.forEach(
                strips,
                (strip, thread) ->
                        fill(strip * STRIP_ROWS, Math.min(rows, (strip + 1) * STRIP_ROWS) - 1, casts, hidden));
    }

    private void addCast(float[] balls, int lamp, double share, List<Cast> casts) {
        List<Disc> discs = new ArrayList<>();
        for (int i = 0; i < balls.length; i += 4) {
            addDisc(balls, i, lamp, discs);
        }
        discs.stream().map(Disc::part).reduce(Part::with).ifPresent(part -> casts.add(new Cast(share, discs, part)));
    }

    private void addDisc(float[] balls, int i, int lamp, List<Disc> discs) {
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
        discs.add(new Disc(x, y, Math.max(0, radius - blur), reach, strength, part(x, y, reach)));
    }

    private Hidden hidden(float[] balls, int i) {
        double h = Math.max(0.02, balls[i + 2]);
        double radius = balls[i + 3];
        double reach = Math.min(AROUND_REACH, 0.15 + 3.5 * Math.sqrt(radius * h));
        return new Hidden(balls[i], balls[i + 1], h, radius, reach, part(balls[i], balls[i + 1], reach));
    }

    /** The cells within a distance each way, as far as the grid goes; may be empty. */
    private Part part(double x, double y, double reach) {
        return new Part(
                Math.max(0, column(x - reach)),
                Math.min(columns - 1, column(x + reach)),
                Math.max(0, row(y - reach)),
                Math.min(rows - 1, row(y + reach)));
    }

    private void fill(int first, int last, List<Cast> casts, List<Hidden> hidden) {
        for (int r = first; r <= last; r++) {
            clear(r);
        }
        double[] dark = new double[columns];
        for (Cast cast : casts) {
            Part strip = cast.part.within(first, last);
            if (strip.fromRow <= strip.toRow) {
                for (Disc disc : cast.discs) {
                    draw(disc, disc.part.within(first, last), dark);
                }
                darken(cast.share, strip);
            }
        }
        for (Hidden ball : hidden) {
            holdOff(ball, ball.part.within(first, last), dark);
        }
        for (int r = first; r <= last; r++) {
            for (int i = r * columns + from[r]; i <= r * columns + to[r]; i++) {
                kept[i] = kept(lamps[i], around[i]);
            }
        }
    }

    private void clear(int row) {
        if (from[row] <= to[row]) {
            int first = row * columns + from[row];
            int end = row * columns + to[row] + 1;
            Arrays.fill(lamps, first, end, 1);
            Arrays.fill(around, first, end, 0);
            Arrays.fill(kept, first, end, kept(1, 0));
        }
        from[row] = columns;
        to[row] = -1;
    }

    private void touch(int row, Part part) {
        from[row] = Math.min(from[row], part.fromColumn);
        to[row] = Math.max(to[row], part.toColumn);
    }

    private void draw(Disc disc, Part part, double[] dark) {
        for (int r = part.fromRow; r <= part.toRow; r++) {
            darkness(disc, originY + r * CELL_METRES - disc.y, part, dark);
            int row = r * columns;
            for (int c = part.fromColumn; c <= part.toColumn; c++) {
                float d = (float) dark[c];
                patch[row + c] = d > patch[row + c] ? d : patch[row + c];
            }
        }
    }

    /** A loop without a branch, so that the compiler does several cells at once. */
    private void darkness(Disc disc, double dy, Part part, double[] dark) {
        double x = disc.x;
        double reach = disc.reach;
        double ramp = disc.reach - disc.inner;
        double strength = disc.strength;
        double[] at = columnX;
        for (int c = part.fromColumn; c <= part.toColumn; c++) {
            double dx = at[c] - x;
            double t = Math.max(0, Math.min(1, (reach - Math.sqrt(dx * dx + dy * dy)) / ramp));
            dark[c] = strength * t * t * (3 - 2 * t);
        }
    }

    private void darken(double share, Part part) {
        for (int r = part.fromRow; r <= part.toRow; r++) {
            touch(r, part);
            for (int i = r * columns + part.fromColumn; i <= r * columns + part.toColumn; i++) {
                if (patch[i] > 0) {
                    lamps[i] *= (float) (1 - share * patch[i]);
                    patch[i] = 0;
                }
            }
        }
    }

    private void holdOff(Hidden ball, Part part, double[] hides) {
        for (int r = part.fromRow; r <= part.toRow; r++) {
            touch(r, part);
            hiding(ball, originY + r * CELL_METRES - ball.y, part, hides);
            int row = r * columns;
            for (int c = part.fromColumn; c <= part.toColumn; c++) {
                around[row + c] += (float) hides[c];
            }
        }
    }

    /** A loop without a branch, as {@link #darkness}. */
    private void hiding(Hidden ball, double dy, Part part, double[] hides) {
        double x = ball.x;
        double h = ball.height;
        double radius = ball.radius;
        double reach2 = ball.reach * ball.reach;
        double radius2 = radius * radius;
        double h2 = h * h;
        double[] at = columnX;
        for (int c = part.fromColumn; c <= part.toColumn; c++) {
            double dx = at[c] - x;
            double flat = dx * dx + dy * dy;
            double d2 = Math.max(radius2, flat + h2);
            double fade = Math.max(0, 1 - flat / reach2);
            hides[c] = fade * radius * radius * h / (d2 * Math.sqrt(d2));
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
        double gx = Clamp.from0((x - originX) / CELL_METRES, columns - 1.01);
        double gy = Clamp.from0((y - originY) / CELL_METRES, rows - 1.01);
        int c = (int) gx;
        int r = (int) gy;
        double fx = gx - c;
        double fy = gy - r;
        int i = r * columns + c;
        return (kept[i] * (1 - fx) + kept[i + 1] * fx) * (1 - fy)
                + (kept[i + columns] * (1 - fx) + kept[i + columns + 1] * fx) * fy;
    }

    private static double kept(float lamps, float around) {
        double ambient = GymLight.AMBIENT_SHARE;
        double sky = 1 - Math.min(0.92, 2.2 * around);
        return Math.max(0, lamps - ambient + ambient * sky * (0.4 + 0.6 * lamps));
    }
}
