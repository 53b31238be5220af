package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.gym.GymSurfaces;
import floorgauge.sampleclips.render.gym.GymSurfaces.Surface;

/**
 * The empty gym as a camera sees it, a pixel at a time: scattered light, light mirrored by the varnish, and for floor
 * pixels where on the floor they look. Pixels that straddle two surfaces are sampled on a fine grid.
 */
final class Background {

    private static final int FINE = 4;
    /**
     * Rays are found at every fourth pixel and lie on straight lines between: a lens that bends by k1 = 0.2 is off by
     * k1 x h2 / 8 times 6, under 0.001 pixels.
     */
    private static final int STRIDE = 4;

    final int width;
    final int height;
    final float[] diffuse;
    final float[] mirrored;
    /** Both together: what is seen where nobody shades the floor or is mirrored in it. */
    final float[] bare;
    /** Share of light that the varnish mirrors. */
    final float[] mirror;
    /** Floor point that a pixel's centre looks at; NaN where it looks at a wall or the ceiling. */
    final float[] floorX;

    final float[] floorY;
    private final GymSurfaces gym;

    Background(GymSurfaces gym, int width, int height) {
        this.gym = gym;
        this.width = width;
        this.height = height;
        diffuse = new float[3 * width * height];
        mirrored = new float[3 * width * height];
        bare = new float[3 * width * height];
        mirror = new float[width * height];
        floorX = new float[width * height];
        floorY = new float[width * height];
    }

    /** What one thread needs while it fills rows. */
    private final class Work {
        private final GymSurfaces.Hit hit = new GymSurfaces.Hit();
        private final GymSurfaces.Hit scratch = new GymSurfaces.Hit();
        private final double[] direction = new double[3];
        private double[] upper = new double[3 * (width + 1 + STRIDE)];
        private double[] lower = new double[3 * (width + 1 + STRIDE)];
        private Surface[] upperSurface = new Surface[width + 1 + STRIDE];
        private Surface[] lowerSurface = new Surface[width + 1 + STRIDE];
    }

    /** Fills rows from one to before another. Calls for different rows may run at once. */
    void fill(Camera camera, int fromRow, int toRow) {
        Work w = new Work();
        double[] eye = camera.position();
        corners(camera, eye, fromRow, w.lower, w.lowerSurface, w);
        for (int y = fromRow; y < toRow; y++) {
            double[] directions = w.upper;
            w.upper = w.lower;
            w.lower = directions;
            Surface[] surfaces = w.upperSurface;
            w.upperSurface = w.lowerSurface;
            w.lowerSurface = surfaces;
            corners(camera, eye, y + 1, w.lower, w.lowerSurface, w);
            for (int x = 0; x < width; x++) {
                pixel(eye, x, y, w);
            }
        }
    }

    private void corners(Camera camera, double[] eye, int row, double[] out, Surface[] surfaces, Work w) {
        for (int x = 0; x < width + STRIDE; x += STRIDE) {
            camera.direction(x - 0.5, row - 0.5, w.direction);
            System.arraycopy(w.direction, 0, out, 3 * x, 3);
        }
        for (int before = 0; before < width; before += STRIDE) {
            int after = before + STRIDE;
            for (int k = 1; k < STRIDE; k++) {
                double share = (double) k / STRIDE;
                for (int i = 0; i < 3; i++) {
                    out[3 * (before + k) + i] = out[3 * before + i] * (1 - share) + out[3 * after + i] * share;
                }
            }
            Surface first = before == 0 ? surface(eye, out, 0, w) : surfaces[before];
            Surface last = surface(eye, out, after, w);
            boolean same = first == last && sameWay(out, 3 * before, 3 * after);
            for (int x = before; x < after; x++) {
                surfaces[x] = same || x == before ? first : surface(eye, out, x, w);
            }
            surfaces[after] = last;
        }
    }

    private Surface surface(double[] eye, double[] directions, int x, Work w) {
        gym.trace(eye[0], eye[1], eye[2], directions[3 * x], directions[3 * x + 1], directions[3 * x + 2], w.scratch);
        return w.scratch.surface;
    }

    /** Whether two rays head for the same half of the room each way: then all between them meet the wall that both meet. */
    private static boolean sameWay(double[] d, int a, int b) {
        return d[a] < 0 == d[b] < 0 && d[a + 1] < 0 == d[b + 1] < 0 && d[a + 2] < 0 == d[b + 2] < 0;
    }

    private void pixel(double[] eye, int x, int y, Work w) {
        int i = y * width + x;
        Surface s = w.upperSurface[x];
        boolean one = s == w.upperSurface[x + 1] && s == w.lowerSurface[x] && s == w.lowerSurface[x + 1];
        if (one) {
            ray(eye, x, 0.5, 0.5, 1, true, w);
            store(i, w.hit, 1, true);
        } else {
            clear(i);
            for (int v = 0; v < FINE; v++) {
                for (int u = 0; u < FINE; u++) {
                    ray(eye, x, (u + 0.5) / FINE, (v + 0.5) / FINE, 1.0 / FINE, false, w);
                    store(i, w.hit, 1f / (FINE * FINE), false);
                }
            }
        }
        for (int c = 3 * i; c < 3 * i + 3; c++) {
            bare[c] = diffuse[c] + mirrored[c];
        }
        floorX[i] = w.hit.surface == Surface.FLOOR ? (float) w.hit.x : Float.NaN;
        floorY[i] = (float) w.hit.y;
    }

    /** Shades what lies at a fraction of the way across and down a pixel, smeared over a part {@code size} of it. */
    private void ray(double[] eye, int x, double u, double v, double size, boolean oneSurface, Work w) {
        double[] a = w.upper;
        double[] b = w.lower;
        int i = 3 * x;
        double dx = mix(a[i], a[i + 3], b[i], b[i + 3], u, v);
        double dy = mix(a[i + 1], a[i + 4], b[i + 1], b[i + 4], u, v);
        double dz = mix(a[i + 2], a[i + 5], b[i + 2], b[i + 5], u, v);
        if (oneSurface) {
            gym.traceTo(w.upperSurface[x], eye[0], eye[1], eye[2], dx, dy, dz, w.hit);
        } else {
            gym.trace(eye[0], eye[1], eye[2], dx, dy, dz, w.hit);
        }
        double rx = size * 0.5 * (a[i + 3] - a[i] + b[i + 3] - b[i]);
        double ry = size * 0.5 * (a[i + 4] - a[i + 1] + b[i + 4] - b[i + 1]);
        double rz = size * 0.5 * (a[i + 5] - a[i + 2] + b[i + 5] - b[i + 2]);
        if (w.hit.surface != Surface.FLOOR) {
            double across = Math.sqrt(rx * rx + ry * ry + rz * rz) * w.hit.distance;
            gym.shadeFar(w.hit, 1.5 * across);
            return;
        }
        double qx = size * 0.5 * (b[i] - a[i] + b[i + 3] - a[i + 3]);
        double qy = size * 0.5 * (b[i + 1] - a[i + 1] + b[i + 4] - a[i + 4]);
        double qz = size * 0.5 * (b[i + 2] - a[i + 2] + b[i + 5] - a[i + 5]);
        double t = w.hit.distance;
        double ux = t * (rx - dx * rz / dz);
        double uy = t * (ry - dy * rz / dz);
        double vx = t * (qx - dx * qz / dz);
        double vy = t * (qy - dy * qz / dz);
        gym.shadeFloor(w.hit, ux, uy, vx, vy, dx, dy, dz, w.scratch);
    }

    private static double mix(double a, double b, double c, double d, double u, double v) {
        return (a * (1 - u) + b * u) * (1 - v) + (c * (1 - u) + d * u) * v;
    }

    private void clear(int i) {
        mirror[i] = 0;
        for (int c = 0; c < 3; c++) {
            diffuse[3 * i + c] = 0;
            mirrored[3 * i + c] = 0;
        }
    }

    private void store(int i, GymSurfaces.Hit hit, float share, boolean first) {
        float keep = first ? 0 : 1;
        mirror[i] = keep * mirror[i] + share * (float) hit.mirror;
        for (int c = 0; c < 3; c++) {
            diffuse[3 * i + c] = keep * diffuse[3 * i + c] + share * hit.diffuse[c];
            mirrored[3 * i + c] = keep * mirrored[3 * i + c] + share * hit.mirrored[c];
        }
    }
}
