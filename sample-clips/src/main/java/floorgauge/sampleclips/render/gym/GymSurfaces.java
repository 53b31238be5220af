package floorgauge.sampleclips.render.gym;

import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.render.value.HashGrid;

/** What a ray sees of the empty room: floor, four walls, ceiling. Thread-safe; give each thread its own {@link Hit}. */
public final class GymSurfaces {

    /** What a ray met. */
    public enum Surface {
        FLOOR,
        END_WALL,
        SIDE_WALL,
        CEILING
    }

    /** Where a ray met the room, and the light that leaves there. */
    public static final class Hit {
        /** What was met. */
        public Surface surface = Surface.FLOOR;
        /** Court frame, metres. */
        public double x;
        /** Court frame, metres. */
        public double y;
        /** Court frame, metres. */
        public double z;
        /** Multiple of the ray's direction from its origin. */
        public double distance;
        /** Scattered light, before shadows. */
        public final float[] diffuse = new float[3];
        /** Light mirrored by varnish; none but on the floor. */
        public final float[] mirrored = new float[3];
        /** Share of light that the varnish mirrors here, 0 to 1; 0 but on the floor. */
        public double mirror;
    }

    private static final double DADO_METRES = 1.7;
    private static final double PAD_METRES = 2.0;
    private static final double NORMAL_REFLECTANCE = 0.04;
    /** How far strips tilt the varnish, radians. */
    private static final double WAVE = 0.003;

    private static final double SLATS_PER_METRE = 2.2;
    private static final double BRICK_ROW = 0.2;
    private static final double BRICK = 0.4;
    private static final double TONES_ALONG = 0.2;
    private static final double TONES_UP = 0.3;

    private final Gym gym;
    private final double phase;
    private final GymLight light;
    private final WoodFloor wood;
    private final FloorPaint paint;
    private final float[] dado;
    private final float[] wall;
    private final float[] pad;
    private final HashGrid slats;
    private final HashGrid tones;
    private final HashGrid bricks;
    private final float[] ceiling = {0.42f, 0.41f, 0.39f};

    public GymSurfaces(Gym gym) {
        this.gym = gym;
        phase = 6 * Hash.unit(gym.seed(), 31, 0);
        light = new GymLight(gym.ceilingMetres() - 0.6, gym.halfLengthMetres() - 1, gym.halfWidthMetres() - 1.5, 5, 3);
        wood = new WoodFloor(gym.woodRgb(), Hash.of(gym.seed(), 21));
        paint = new FloorPaint(gym.layers(), gym.halfLengthMetres(), gym.halfWidthMetres(), Hash.of(gym.seed(), 22));
        dado = Colour.linear(gym.dadoRgb());
        wall = Colour.linear(gym.wallRgb());
        pad = Colour.linear(gym.padRgb());
        double half = Math.max(gym.halfLengthMetres(), gym.halfWidthMetres()) + 1;
        slats = grid(41, -half * SLATS_PER_METRE, half * SLATS_PER_METRE, 0, 0);
        tones = grid(42, -half * TONES_ALONG, half * TONES_ALONG, 0, (gym.ceilingMetres() + 1) * TONES_UP);
        bricks = grid(43, 0, gym.ceilingMetres() / BRICK_ROW, -half / BRICK, half / BRICK);
    }

    private HashGrid grid(int salt, double fromA, double toA, double fromB, double toB) {
        return new HashGrid(
                gym.seed() + salt,
                (long) Math.floor(fromA),
                (long) Math.ceil(toA) + 1,
                (long) Math.floor(fromB),
                (long) Math.ceil(toB) + 1);
    }

    public GymLight light() {
        return light;
    }

    /** Finds the surface that a ray meets. The origin lies in the room; on or outside its walls, they are looked through. */
    public void trace(double ox, double oy, double oz, double dx, double dy, double dz, Hit hit) {
        double best = dz < 0 ? -oz / dz : (gym.ceilingMetres() - oz) / Math.max(dz, 1e-9);
        hit.surface = dz < 0 ? Surface.FLOOR : Surface.CEILING;
        double tx = toWall(gym.halfLengthMetres(), ox, dx);
        if (tx > 0 && tx < best) {
            best = tx;
            hit.surface = Surface.END_WALL;
        }
        double ty = toWall(gym.halfWidthMetres(), oy, dy);
        if (ty > 0 && ty < best) {
            best = ty;
            hit.surface = Surface.SIDE_WALL;
        }
        meet(ox, oy, oz, dx, dy, dz, best, hit);
    }

    private static void meet(
            double ox, double oy, double oz, double dx, double dy, double dz, double distance, Hit hit) {
        hit.distance = distance;
        hit.x = ox + distance * dx;
        hit.y = oy + distance * dy;
        hit.z = oz + distance * dz;
    }

    /** {@link #trace} for a ray of which is known what it meets. */
    public void traceTo(Surface surface, double ox, double oy, double oz, double dx, double dy, double dz, Hit hit) {
        hit.surface = surface;
        double distance = switch (surface) {
            case FLOOR -> -oz / dz;
            case CEILING -> (gym.ceilingMetres() - oz) / Math.max(dz, 1e-9);
            case END_WALL -> toWall(gym.halfLengthMetres(), ox, dx);
            case SIDE_WALL -> toWall(gym.halfWidthMetres(), oy, dy);
        };
        meet(ox, oy, oz, dx, dy, dz, distance, hit);
    }

    private static double toWall(double half, double o, double d) {
        return ((d < 0 ? -1 : 1) * half - o) / (Math.abs(d) < 1e-9 ? 1e-9 : d);
    }

    /**
     * The light that leaves the floor where {@link #trace} put the hit.
     *
     * @param ux floor metres along x for one pixel to the right; {@code uy}, {@code vx}, {@code vy} alike
     * @param dx direction of the ray, any length
     */
    public void shadeFloor(
            Hit hit, double ux, double uy, double vx, double vy, double dx, double dy, double dz, Hit scratch) {
        wood.reflectance(hit.x, hit.y, Math.abs(ux) + Math.abs(vx), Math.abs(uy) + Math.abs(vy), hit.diffuse);
        paint.paint(hit.x, hit.y, ux, uy, vx, vy, hit.diffuse);
        double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
        double cosine = -dz / length;
        double off = 1 - cosine;
        double grazing = off * off * off * off * off;
        hit.mirror = gym.gloss() * (NORMAL_REFLECTANCE + (1 - NORMAL_REFLECTANCE) * grazing) * 0.85;
        double lit = light.onFloor(hit.x, hit.y) * (1 - hit.mirror);
        for (int c = 0; c < 3; c++) {
            hit.diffuse[c] *= (float) lit;
        }
        reflect(hit, dx / length, dy / length, -dz / length, scratch);
    }

    private void reflect(Hit hit, double dx, double dy, double dz, Hit scratch) {
        double nx = WAVE * Math.sin(9 * hit.x + 40 * hit.y + phase);
        double ny = WAVE * Math.sin(11 * hit.x - 53 * hit.y + 2 * phase);
        trace(hit.x, hit.y, 1e-4, dx + nx, dy + ny, dz, scratch);
        double blur = 0.10 + 0.055 * scratch.distance * (1.3 - gym.gloss() * 0.5);
        shadeFar(scratch, blur);
        for (int c = 0; c < 3; c++) {
            hit.mirrored[c] = (float) (hit.mirror * scratch.diffuse[c]);
        }
    }

    /**
     * The light that leaves a wall or the ceiling.
     *
     * @param blur metres over which detail is smeared
     */
    public void shadeFar(Hit hit, double blur) {
        hit.mirror = 0;
        hit.mirrored[0] = 0;
        hit.mirrored[1] = 0;
        hit.mirrored[2] = 0;
        switch (hit.surface) {
            case CEILING -> shadeCeiling(hit, blur);
            case END_WALL -> shadeWall(hit, hit.y, true, blur);
            case SIDE_WALL -> shadeWall(hit, hit.x, false, blur);
            case FLOOR -> throw new IllegalArgumentException("the floor is shaded by shadeFloor");
        }
    }

    private void shadeCeiling(Hit hit, double blur) {
        double beams = 0.85 + 0.15 * soft(Math.abs(offGrid(hit.x, 4)) - 0.25, blur);
        double lamps = 14 * light.lampSeen(hit.x, hit.y, blur);
        for (int c = 0; c < 3; c++) {
            hit.diffuse[c] = (float) (ceiling[c] * beams + lamps);
        }
    }

    private void shadeWall(Hit hit, double along, boolean end, double blur) {
        double z = hit.z;
        double lower = soft(DADO_METRES - z, blur);
        double stripe = soft(0.06 - Math.abs(z - DADO_METRES - 0.06), blur);
        double course = bricks(along, z, blur);
        double slatted = lower == 0 ? 1 : slatted(along, blur);
        double height = 0.62 + 0.12 * Math.min(1, z / 4) - 0.10 * Math.max(0, z / gym.ceilingMetres() - 0.6);
        double level = height * (0.94 + 0.06 * tones.noise(along * TONES_ALONG, z * TONES_UP));
        for (int c = 0; c < 3; c++) {
            double colour = wall[c] * course + lower * (dado[c] * slatted - wall[c] * course);
            colour += stripe * (0.25 * wall[c] - colour);
            hit.diffuse[c] = (float) (colour * level);
        }
        if (end) {
            padOver(hit, along, level, blur);
        } else {
            openings(hit, along, level, blur);
        }
    }

    private double slatted(double along, double blur) {
        double slat = 2 * slats.unit((long) Math.floor(along * SLATS_PER_METRE), 0) - 1;
        return 1 + 0.06 * slat * (blur <= 0.45 ? 1 : 0.45 / blur);
    }

    private double bricks(double along, double z, double blur) {
        if (blur > 0.12) {
            return 0.97;
        }
        long row = (long) Math.floor(z / BRICK_ROW);
        double shift = (row & 1) * 0.2;
        double joint = Math.min(Math.abs(offGrid(z, BRICK_ROW)), Math.abs(offGrid(along + shift, BRICK)));
        double tone = bricks.unit(row, (long) Math.floor((along + shift + 0.2) / BRICK));
        return 1 + 0.05 * (tone - 0.5) - 0.12 * soft(0.008 - joint, Math.max(blur, 0.01));
    }

    /** Padding behind each basket, in panels. */
    private void padOver(Hit hit, double along, double level, double blur) {
        double across = soft(4.2 - Math.abs(along), blur);
        if (across == 0) {
            return;
        }
        double inside = across * soft(PAD_METRES - hit.z, blur) * soft(hit.z - 0.1, blur);
        if (inside == 0) {
            return;
        }
        double gap = soft(0.015 - Math.abs(offGrid(along, 1.2)), Math.max(blur, 0.01));
        for (int c = 0; c < 3; c++) {
            double colour = pad[c] * level * (1 - 0.6 * gap);
            hit.diffuse[c] += (float) (inside * (colour - hit.diffuse[c]));
        }
    }

    /** Doors on both side walls, and a band of windows high on the one with y above 0. */
    private void openings(Hit hit, double along, double level, double blur) {
        double door = 0;
        double low = soft(2.15 - hit.z, blur);
        if (low > 0) {
            door = Math.max(door, soft(0.95 - Math.abs(along + 0.62 * gym.halfLengthMetres()), blur) * low);
            door = Math.max(door, soft(0.95 - Math.abs(along - 0.55 * gym.halfLengthMetres()), blur) * low);
        }
        for (int c = 0; door > 0 && c < 3; c++) {
            hit.diffuse[c] += (float) (door * (0.22 * level * wall[c] - hit.diffuse[c]));
        }
        if (gym.windows() && hit.y > 0) {
            double band = soft(1.0 - Math.abs(hit.z - 0.72 * gym.ceilingMetres()), blur)
                    * soft(gym.halfLengthMetres() - 2 - Math.abs(along), blur);
            if (band == 0) {
                return;
            }
            double bar = soft(0.06 - Math.abs(offGrid(along, 1.5)), Math.max(blur, 0.02));
            double glow = band * (1 - 0.9 * bar);
            hit.diffuse[0] += (float) (glow * (1.7 - hit.diffuse[0]));
            hit.diffuse[1] += (float) (glow * (1.85 - hit.diffuse[1]));
            hit.diffuse[2] += (float) (glow * (2.0 - hit.diffuse[2]));
        }
    }

    /** Signed distance to the nearest multiple of a step. */
    private static double offGrid(double t, double step) {
        return t - step * Math.floor(t / step + 0.5);
    }

    /** A step at 0, 1 above, smeared over {@code blur}. */
    private static double soft(double t, double blur) {
        double edge = 0.5 * blur;
        if (t >= edge) {
            return 1;
        }
        return t <= -edge ? 0 : 0.5 + t / blur;
    }
}
