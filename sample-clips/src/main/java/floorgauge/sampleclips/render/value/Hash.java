package floorgauge.sampleclips.render.value;

/** Seeded values from coordinates, the same for the same input on any machine and thread. */
public final class Hash {

    private Hash() {}

    /** Mixes 64 bits (finaliser of SplitMix64: Steele, Lea, Flood, 2014, section 3). */
    public static long mix(long z) {
        long a = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        long b = (a ^ (a >>> 27)) * 0x94D049BB133111EBL;
        return b ^ (b >>> 31);
    }

    public static long of(long seed, long a) {
        return mix(mix(seed + 0x9E3779B97F4A7C15L) + a * 0x9E3779B97F4A7C15L);
    }

    public static long of(long seed, long a, long b) {
        return next(of(seed, a), b);
    }

    private static long next(long hash, long b) {
        return mix(hash + b * 0xD1B54A32D192ED03L);
    }

    /** Uniform in 0 to 1, 1 left out. */
    public static double unit(long hash) {
        return (hash >>> 11) * 0x1.0p-53;
    }

    /** Uniform in 0 to 1 from a seed and two whole numbers. */
    public static double unit(long seed, long a, long b) {
        return unit(of(seed, a, b));
    }

    /** Smooth noise in -1 to 1 along a line: hashed values a unit apart, joined by the cubic 3 f2 - 2 f3. */
    public static double noise(long seed, double x) {
        long cell = (long) Math.floor(x);
        double f = x - cell;
        double s = f * f * (3 - 2 * f);
        return 2 * (unit(of(seed, cell)) * (1 - s) + unit(of(seed, cell + 1)) * s) - 1;
    }

    /** Smooth noise in -1 to 1 on a plane, bilinear between hashed values with the cubic 3 f2 - 2 f3. */
    public static double noise(long seed, double x, double y) {
        long cx = (long) Math.floor(x);
        long cy = (long) Math.floor(y);
        double fx = x - cx;
        double fy = y - cy;
        double sx = fx * fx * (3 - 2 * fx);
        double sy = fy * fy * (3 - 2 * fy);
        long left = of(seed, cx);
        long right = of(seed, cx + 1);
        double low = unit(next(left, cy)) * (1 - sx) + unit(next(right, cy)) * sx;
        double high = unit(next(left, cy + 1)) * (1 - sx) + unit(next(right, cy + 1)) * sx;
        return 2 * (low * (1 - sy) + high * sy) - 1;
    }
}
