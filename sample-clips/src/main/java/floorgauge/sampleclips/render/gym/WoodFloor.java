package floorgauge.sampleclips.render.gym;

import floorgauge.sampleclips.render.value.Clamp;
import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Hash;

/** A varnished strip floor: strips along the court, each cut into planks with a tone and a grain of their own. */
public final class WoodFloor {

    private static final double STRIP_METRES = 0.068;
    private static final double PLANK_METRES = 1.3;
    private static final double SEAM_METRES = 0.0016;
    private static final int MOST_STRIPS = 6;
    private static final double PATCH_METRES = 0.2;
    private static final int PATCH_CELLS = 240;

    private static final double HALF_LENGTH_METRES = 24;
    private static final double HALF_WIDTH_METRES = 16;
    private static final int STRIPS = (int) (2 * HALF_WIDTH_METRES / STRIP_METRES);
    private static final int PLANKS = (int) (2 * HALF_LENGTH_METRES / PLANK_METRES);

    private final long seed;
    private final float[] base;
    private final float[] patches;
    /** For each strip about the middle, how far its planks are shifted. */
    private final double[] shifts = new double[STRIPS];
    /** For each strip and plank about the middle, -0.5 to 0.5. */
    private final double[] tones = new double[STRIPS * PLANKS];

    private final double[] hues = new double[STRIPS * PLANKS];

    public WoodFloor(int rgb, long seed) {
        this.base = Colour.linear(rgb);
        this.seed = seed;
        patches = patches(seed);
        for (int s = 0; s < STRIPS; s++) {
            shifts[s] = shift(s - STRIPS / 2);
            for (int p = 0; p < PLANKS; p++) {
                long plank = Hash.of(seed, s - STRIPS / 2, p - PLANKS / 2);
                tones[s * PLANKS + p] = tone(plank);
                hues[s * PLANKS + p] = hue(plank);
            }
        }
    }

    private double shift(long strip) {
        return Hash.unit(Hash.of(seed + 11, strip)) * PLANK_METRES * 8;
    }

    private static double tone(long plank) {
        return Hash.unit(plank) - 0.5;
    }

    private static double hue(long plank) {
        return Hash.unit(Hash.mix(plank + 1)) - 0.5;
    }

    /**
     * The reflectance of bare wood over a pixel's footprint.
     *
     * @param spanX size of the footprint along x, metres
     * @param spanY size of the footprint along y, metres
     * @param rgb receives linear light
     */
    public void reflectance(double x, double y, double spanX, double spanY, float[] rgb) {
        double span = Math.max(spanY, 1e-4);
        double low = (y - span / 2) / STRIP_METRES;
        double high = (y + span / 2) / STRIP_METRES;
        long first = (long) Math.floor(low);
        long last = (long) Math.floor(high);
        double tone = 0;
        double hue = 0;
        if (last - first < MOST_STRIPS) {
            for (long strip = first; strip <= last; strip++) {
                double share = first == last ? 1 : (Math.min(high, strip + 1) - Math.max(low, strip)) / (high - low);
                long s = strip + STRIPS / 2;
                boolean known = s >= 0 && s < STRIPS;
                double shift = known ? shifts[(int) s] : shift(strip);
                long plank = (long) Math.floor((x + shift) / PLANK_METRES);
                long p = plank + PLANKS / 2;
                if (known && p >= 0 && p < PLANKS) {
                    int i = (int) (s * PLANKS + p);
                    tone += share * tones[i];
                    hue += share * hues[i];
                } else {
                    long h = Hash.of(seed, strip, plank);
                    tone += share * tone(h);
                    hue += share * hue(h);
                }
            }
        }
        double grainFade = Math.min(1, 0.010 / span) * Math.min(1, 0.15 / Math.max(spanX, 1e-4));
        double grain = grainFade < 0.04 ? 0 : grainFade * Hash.noise(seed + 7 + first, x * 5, y * 110);
        double patch = patch(x, y);
        double light = 1 + 0.26 * tone + 0.10 * grain + 0.05 * patch - seams(low, high, first, last, span);
        rgb[0] = (float) (base[0] * light * (1 + 0.03 * hue));
        rgb[1] = (float) (base[1] * light);
        rgb[2] = (float) (base[2] * light * (1 - 0.10 * hue));
    }

    /** Slow changes of tone over metres, from a grid. */
    private double patch(double x, double y) {
        double gx = Clamp.from0(x / PATCH_METRES + PATCH_CELLS / 2.0, PATCH_CELLS - 1.01);
        double gy = Clamp.from0(y / PATCH_METRES + PATCH_CELLS / 2.0, PATCH_CELLS - 1.01);
        int c = (int) gx;
        int r = (int) gy;
        double fx = gx - c;
        double fy = gy - r;
        int i = r * PATCH_CELLS + c;
        return (patches[i] * (1 - fx) + patches[i + 1] * fx) * (1 - fy)
                + (patches[i + PATCH_CELLS] * (1 - fx) + patches[i + PATCH_CELLS + 1] * fx) * fy;
    }

    private static float[] patches(long seed) {
        float[] out = new float[PATCH_CELLS * PATCH_CELLS];
        for (int r = 0; r < PATCH_CELLS; r++) {
            for (int c = 0; c < PATCH_CELLS; c++) {
                double x = (c - PATCH_CELLS / 2.0) * PATCH_METRES;
                double y = (r - PATCH_CELLS / 2.0) * PATCH_METRES;
                out[r * PATCH_CELLS + c] = (float) (0.5 * Hash.noise(seed + 3, x * 0.33, y * 0.45)
                        + 0.25 * Hash.noise(seed + 4, x * 1.1, y * 1.7));
            }
        }
        return out;
    }

    private static double seams(double low, double high, long first, long last, double span) {
        double count = last - first < MOST_STRIPS ? last - first : (high - low);
        return 0.45 * Math.min(1, count * SEAM_METRES / span);
    }
}
