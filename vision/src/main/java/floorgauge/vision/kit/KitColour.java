package floorgauge.vision.kit;

import java.util.Arrays;
import java.util.Collection;

/**
 * The colours of a person's shirt as a histogram in CIE L*a*b*, softly binned, kept as the square roots of its shares so
 * that the Bhattacharyya coefficient of two kits is a dot product.
 *
 * <p>Distance of two kits: Hellinger's, sqrt(1 - sum sqrt(p q)), 0 for equal colours, 1 for nothing in common (A.
 * Bhattacharyya, "On a measure of divergence between two statistical populations", 1943). Immutable.
 */
public final class KitColour {

    /** Bin centres; narrow about grey, where kits differ by little. */
    private static final double[] LIGHTNESS = {12, 37, 62, 87};

    private static final double[] CHROMA = {-60, -30, -12, 0, 12, 30, 60};
    static final int BINS = LIGHTNESS.length * CHROMA.length * CHROMA.length;
    private static final double SCALE = 255;

    private final byte[] roots;

    private KitColour(byte[] roots) {
        this.roots = roots;
    }

    /** Collects pixels into a kit. */
    public static final class Sampler {
        private final double[] histogram = new double[BINS];
        private double pixels;

        /**
         * Adds one pixel.
         *
         * @param lightness CIE L*, 0 to 100
         * @param a CIE a*
         * @param b CIE b*
         */
        public void add(double lightness, double a, double b) {
            int l0 = lower(LIGHTNESS, lightness);
            int a0 = lower(CHROMA, a);
            int b0 = lower(CHROMA, b);
            double lw = share(LIGHTNESS, l0, lightness);
            double aw = share(CHROMA, a0, a);
            double bw = share(CHROMA, b0, b);
            for (int corner = 0; corner < 8; corner++) {
                int dl = corner & 1;
                int da = corner >> 1 & 1;
                int db = corner >> 2 & 1;
                double weight = (dl == 1 ? lw : 1 - lw) * (da == 1 ? aw : 1 - aw) * (db == 1 ? bw : 1 - bw);
                if (weight > 0) {
                    histogram[((l0 + dl) * CHROMA.length + a0 + da) * CHROMA.length + b0 + db] += weight;
                }
            }
            pixels++;
        }

        /** Number of pixels so far. */
        public double pixels() {
            return pixels;
        }

        /** The kit of the pixels so far, of which there must be at least one. */
        public KitColour kit() {
            if (pixels == 0) {
                throw new IllegalStateException("a kit needs at least one pixel");
            }
            double[] roots = new double[BINS];
            for (int i = 0; i < BINS; i++) {
                roots[i] = Math.sqrt(histogram[i] / pixels);
            }
            return ofRoots(roots);
        }
    }

    private static int lower(double[] centres, double value) {
        int i = 0;
        while (i < centres.length - 2 && value >= centres[i + 1]) {
            i++;
        }
        return i;
    }

    private static double share(double[] centres, int lower, double value) {
        double t = (value - centres[lower]) / (centres[lower + 1] - centres[lower]);
        return Math.max(0, Math.min(1, t));
    }

    private static KitColour ofRoots(double[] roots) {
        double norm = 0;
        for (double r : roots) {
            norm += r * r;
        }
        double scale = SCALE / Math.sqrt(norm);
        byte[] bytes = new byte[BINS];
        for (int i = 0; i < BINS; i++) {
            bytes[i] = (byte) Math.round(roots[i] * scale);
        }
        return new KitColour(bytes);
    }

    /** The middle of several kits, at least one: the direction of the sum of their roots. */
    public static KitColour mean(Collection<KitColour> kits) {
        if (kits.isEmpty()) {
            throw new IllegalArgumentException("the mean of no kits");
        }
        double[] sum = new double[BINS];
        for (KitColour kit : kits) {
            for (int i = 0; i < BINS; i++) {
                sum[i] += kit.root(i);
            }
        }
        return ofRoots(sum);
    }

    /** Hellinger distance, 0 to 1. */
    public double distanceTo(KitColour other) {
        double dot = 0;
        double mine = 0;
        double theirs = 0;
        for (int i = 0; i < BINS; i++) {
            double p = root(i);
            double q = other.root(i);
            dot += p * q;
            mine += p * p;
            theirs += q * q;
        }
        return Math.sqrt(Math.max(0, 1 - dot / Math.sqrt(mine * theirs)));
    }

    /** Mean CIE L*, a*, b* as far as the bins tell. */
    public double[] meanLab() {
        double[] lab = new double[3];
        double total = 0;
        for (int i = 0; i < BINS; i++) {
            double share = root(i) * root(i);
            int side = CHROMA.length;
            lab[0] += share * LIGHTNESS[i / (side * side)];
            lab[1] += share * CHROMA[i / side % side];
            lab[2] += share * CHROMA[i % side];
            total += share;
        }
        for (int i = 0; i < lab.length; i++) {
            lab[i] /= total;
        }
        return lab;
    }

    /** {@link #meanLab} as 0xRRGGBB of sRGB, by the formulas of CIE 1976 and IEC 61966-2-1 with white D65. */
    public int meanRgb() {
        double[] lab = meanLab();
        double fy = (lab[0] + 16) / 116;
        double x = 0.95047 * inverse(fy + lab[1] / 500);
        double y = inverse(fy);
        double z = 1.08883 * inverse(fy - lab[2] / 200);
        int red = channel(3.2406 * x - 1.5372 * y - 0.4986 * z);
        int green = channel(-0.9689 * x + 1.8758 * y + 0.0415 * z);
        int blue = channel(0.0557 * x - 0.2040 * y + 1.0570 * z);
        return red << 16 | green << 8 | blue;
    }

    private static double inverse(double t) {
        return t > 6.0 / 29 ? t * t * t : 3 * (6.0 / 29) * (6.0 / 29) * (t - 4.0 / 29);
    }

    private static int channel(double linear) {
        double value = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * Math.max(0, Math.min(1, value)));
    }

    private double root(int i) {
        return (roots[i] & 0xFF) / SCALE;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof KitColour kit && Arrays.equals(roots, kit.roots);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(roots);
    }

    @Override
    public String toString() {
        double[] lab = meanLab();
        return String.format(java.util.Locale.ROOT, "kit of mean L* %.0f, a* %.0f, b* %.0f", lab[0], lab[1], lab[2]);
    }
}
