package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.value.Hash;

/**
 * From light to bytes: exposure that drifts, lamps that flicker, vignetting, photon and read noise, and the tone curve. Noise of a pixel depends on the seed, the frame and the pixel alone.
 */
public final class Sensor {

    private static final int QUANTILES = 1024;
    private static final double READ = 0.0035;

    private final long seed;
    private final double gain;
    private final double noise;
    private final double drift;
    private final ToneCurve tone = new ToneCurve();
    private final float[] gauss = new float[QUANTILES];

    /**
     * @param gain exposure, 1 for a well exposed gym
     * @param noise photon noise of a light of 1, standard deviation; 0.012 a good camera, 0.03 a phone indoors
     * @param drift how far automatic exposure wanders, share of the exposure
     */
    public Sensor(double gain, double noise, double drift, long seed) {
        this.gain = gain;
        this.noise = noise;
        this.drift = drift;
        this.seed = seed;
        double spread = 0;
        for (int i = 0; i < QUANTILES; i++) {
            gauss[i] = (float) quantile((i + 0.5) / QUANTILES);
            spread += gauss[i] * gauss[i] / QUANTILES;
        }
        for (int i = 0; i < QUANTILES; i++) {
            gauss[i] /= (float) Math.sqrt(spread);
        }
    }

    /** Normal quantile by bisection on the logistic approximation p = 1 / (1 + exp(-1.702 z)); near enough for noise. */
    private static double quantile(double p) {
        return -Math.log(1 / p - 1) / 1.702;
    }

    /** What the light of a frame is multiplied with. */
    public double exposure(double timeSeconds) {
        double wander = drift * Hash.noise(seed + 5, timeSeconds * 0.4);
        double flicker = 0.006 * Math.sin(2 * Math.PI * 1.7 * timeSeconds);
        return gain * (1 + wander + flicker);
    }

    /**
     * Develops rows of a picture.
     *
     * @param light red, green, blue a pixel, from the first of the rows on
     * @param bgr the whole picture; receives blue, green, red bytes of the rows
     */
    public void develop(
            float[] light, int width, int height, int fromRow, int toRow, long frame, double timeSeconds, byte[] bgr) {
        double exposure = exposure(timeSeconds);
        long frameSeed = Hash.of(seed, frame);
        double cx = (width - 1) / 2.0;
        double cy = (height - 1) / 2.0;
        double corner = 1 / (cx * cx + cy * cy);
        double[] level = new double[3 * width];
        double[] sigma = new double[3 * width];
        for (int y = fromRow; y < toRow; y++) {
            int first = 3 * (y - fromRow) * width;
            double dy2 = (y - cy) * (y - cy);
            for (int x = 0; x < width; x++) {
                double r2 = ((x - cx) * (x - cx) + dy2) * corner;
                double factor = exposure * (1 - 0.16 * r2);
                int k = 3 * x;
                level[k] = light[first + k] * factor;
                level[k + 1] = light[first + k + 1] * factor;
                level[k + 2] = light[first + k + 2] * factor;
            }
            spread(level, sigma);
            int pixel = y * width;
            for (int x = 0; x < width; x++) {
                int k = 3 * x;
                int to = 3 * (pixel + x);
                long h = Hash.mix(frameSeed + pixel + x);
                bgr[to + 2] = tone.at(level[k] + sigma[k] * gauss[(int) h & QUANTILES - 1]);
                bgr[to + 1] = tone.at(level[k + 1] + sigma[k + 1] * gauss[(int) (h >>> 10) & QUANTILES - 1]);
                bgr[to] = tone.at(level[k + 2] + sigma[k + 2] * gauss[(int) (h >>> 20) & QUANTILES - 1]);
            }
        }
    }

    /** A loop of its own, so that the compiler does several at once. */
    private void spread(double[] level, double[] sigma) {
        double read = READ * READ;
        double photons = noise * noise;
        for (int k = 0; k < level.length; k++) {
            sigma[k] = Math.sqrt(read + photons * Math.max(0, level[k]));
        }
    }
}
