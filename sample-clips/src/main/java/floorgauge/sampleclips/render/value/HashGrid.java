package floorgauge.sampleclips.render.value;

/** {@link Hash#unit(long, long, long)} and {@link Hash#noise(long, double, double)} of one seed, tabled over a rectangle. */
public final class HashGrid {

    private final long seed;
    private final long firstA;
    private final long firstB;
    private final int countA;
    private final int countB;
    private final double[] units;

    /**
     * @param lastA inclusive, as {@code lastB}; what lies beyond is hashed anew at each call
     */
    public HashGrid(long seed, long firstA, long lastA, long firstB, long lastB) {
        this.seed = seed;
        this.firstA = firstA;
        this.firstB = firstB;
        countA = Math.toIntExact(lastA - firstA + 1);
        countB = Math.toIntExact(lastB - firstB + 1);
        units = new double[countA * countB];
        for (int b = 0; b < countB; b++) {
            for (int a = 0; a < countA; a++) {
                units[b * countA + a] = Hash.unit(seed, firstA + a, firstB + b);
            }
        }
    }

    /** Uniform in 0 to 1. */
    public double unit(long a, long b) {
        long i = a - firstA;
        long k = b - firstB;
        boolean tabled = i >= 0 && i < countA && k >= 0 && k < countB;
        return tabled ? units[(int) k * countA + (int) i] : Hash.unit(seed, a, b);
    }

    /** Smooth noise in -1 to 1. */
    public double noise(double x, double y) {
        long cx = (long) Math.floor(x);
        long cy = (long) Math.floor(y);
        long i = cx - firstA;
        long k = cy - firstB;
        if (i < 0 || i + 1 >= countA || k < 0 || k + 1 >= countB) {
            return Hash.noise(seed, x, y);
        }
        int at = (int) k * countA + (int) i;
        double fx = x - cx;
        double fy = y - cy;
        double sx = fx * fx * (3 - 2 * fx);
        double sy = fy * fy * (3 - 2 * fy);
        double low = units[at] * (1 - sx) + units[at + 1] * sx;
        double high = units[at + countA] * (1 - sx) + units[at + countA + 1] * sx;
        return 2 * (low * (1 - sy) + high * sy) - 1;
    }
}
