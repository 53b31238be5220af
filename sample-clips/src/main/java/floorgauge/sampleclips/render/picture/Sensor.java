package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.value.Hash;

/**
 * From light to bytes: exposure that drifts, lamps that flicker, vignetting, photon and read noise, a soft shoulder, and
 * the sRGB curve (IEC 61966-2-1). Noise of a pixel depends on the seed, the frame and the pixel alone.
 */
public final class Sensor {

    private static final int TABLE = 8192;
    private static final double TABLE_LIGHT = 4;
    private static final int QUANTILES = 1024;
    private static final double READ = 0.0035;

    private final long seed;
    private final double gain;
    private final double noise;
    private final double drift;
    private final byte[] tone = new byte[TABLE];
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
        for (int i = 0; i < TABLE; i++) {
            double root = i / (TABLE - 1.0);
            tone[i] = (byte) Math.round(255 * curve(root * root * TABLE_LIGHT));
        }
        double spread = 0;
        for (int i = 0; i < QUANTILES; i++) {
            gauss[i] = (float) quantile((i + 0.5) / QUANTILES);
            spread += gauss[i] * gauss[i] / QUANTILES;
        }
        for (int i = 0; i < QUANTILES; i++) {
            gauss[i] /= (float) Math.sqrt(spread);
        }
    }

    private static double curve(double light) {
        double knee = 0.55;
        double room = 1 - knee;
        double shown = light < knee ? light : knee + room * (1 - Math.exp(-(light - knee) / room));
        return shown <= 0.0031308 ? 12.92 * shown : 1.055 * Math.pow(shown, 1 / 2.4) - 0.055;
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
     * @param light red, green, blue a pixel
     * @param bgr receives blue, green, red bytes
     */
    public void develop(
            float[] light, int width, int height, int fromRow, int toRow, long frame, double timeSeconds, byte[] bgr) {
        double exposure = exposure(timeSeconds);
        long frameSeed = Hash.of(seed, frame);
        double cx = (width - 1) / 2.0;
        double cy = (height - 1) / 2.0;
        double corner = 1 / (cx * cx + cy * cy);
        for (int y = fromRow; y < toRow; y++) {
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                double r2 = ((x - cx) * (x - cx) + (y - cy) * (y - cy)) * corner;
                double factor = exposure * (1 - 0.16 * r2);
                long h = Hash.mix(frameSeed + i);
                for (int c = 0; c < 3; c++) {
                    double l = light[3 * i + c] * factor;
                    double sigma = Math.sqrt(READ * READ + noise * noise * Math.max(0, l));
                    double seen = l + sigma * gauss[(int) (h >>> (10 * c)) & QUANTILES - 1];
                    bgr[3 * i + 2 - c] = tone[index(seen)];
                }
            }
        }
    }

    private static int index(double light) {
        if (light <= 0) {
            return 0;
        }
        return Math.min(TABLE - 1, (int) (Math.sqrt(light / TABLE_LIGHT) * (TABLE - 1) + 0.5));
    }
}
