package floorgauge.sampleclips.render.picture;

/**
 * How a film is exposed.
 *
 * @param samples pictures averaged for each frame, each at its own instant and shift within a pixel
 * @param shutterSeconds how long the shutter is open
 * @param gain exposure, 1 for a well exposed gym
 * @param noise photon noise, standard deviation at a light of 1
 * @param drift how far automatic exposure wanders, as a share
 * @param threads to render with; the picture does not depend on it
 * @param seed of noise and drift
 */
public record RenderSettings(
        int samples, double shutterSeconds, double gain, double noise, double drift, int threads, long seed) {

    public RenderSettings {
        if (samples < 1 || samples > 64) {
            throw new IllegalArgumentException("1 to 64 samples a frame: " + samples);
        }
        if (!(shutterSeconds >= 0 && shutterSeconds <= 0.1)) {
            throw new IllegalArgumentException("a shutter stands open for 0 to 0.1 s: " + shutterSeconds);
        }
        if (threads < 1) {
            throw new IllegalArgumentException("at least one thread: " + threads);
        }
    }

    /** A good small camera in a lit gym: 1/125 s, little noise. */
    public static RenderSettings standard(long seed) {
        return new RenderSettings(
                8,
                1 / 125.0,
                0.92,
                0.013,
                0.02,
                Math.max(1, Runtime.getRuntime().availableProcessors()),
                seed);
    }

    /** The same with another number of pictures averaged. */
    public RenderSettings withSamples(int count) {
        return new RenderSettings(count, shutterSeconds, gain, noise, drift, threads, seed);
    }
}
