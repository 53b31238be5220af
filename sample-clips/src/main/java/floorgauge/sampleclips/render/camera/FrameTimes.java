package floorgauge.sampleclips.render.camera;

import floorgauge.sampleclips.render.value.Hash;

/** When a camera exposes its frames, in seconds from the start of the film. */
public final class FrameTimes {

    private final double[] seconds;
    private final double nominalRate;

    private FrameTimes(double[] seconds, double nominalRate) {
        this.seconds = seconds;
        this.nominalRate = nominalRate;
    }

    /** Evenly spaced. */
    public static FrameTimes even(double framesPerSecond, double durationSeconds) {
        requireRate(framesPerSecond);
        int count = (int) Math.max(1, Math.floor(durationSeconds * framesPerSecond));
        double[] out = new double[count];
        for (int i = 0; i < count; i++) {
            out[i] = i / framesPerSecond;
        }
        return new FrameTimes(out, framesPerSecond);
    }

    /**
     * As phones film: frames come when they are ready. Intervals vary by up to a fifth, and one frame in twenty-five is
     * left out.
     */
    public static FrameTimes variable(double framesPerSecond, double durationSeconds, long seed) {
        requireRate(framesPerSecond);
        double[] out = new double[(int) Math.ceil(durationSeconds * framesPerSecond) + 1];
        int count = 0;
        for (int tick = 0; tick / framesPerSecond < durationSeconds; tick++) {
            boolean dropped = tick > 0 && Hash.unit(seed, tick, 1) < 0.04;
            if (!dropped) {
                double shift = tick == 0 ? 0 : 0.2 * (Hash.unit(seed, tick, 2) - 0.5);
                out[count++] = (tick + shift) / framesPerSecond;
            }
        }
        return new FrameTimes(java.util.Arrays.copyOf(out, count), framesPerSecond);
    }

    private static void requireRate(double framesPerSecond) {
        if (!(framesPerSecond >= 1 && framesPerSecond <= 240)) {
            throw new IllegalArgumentException("a frame rate lies in 1 to 240 a second: " + framesPerSecond);
        }
    }

    public int count() {
        return seconds.length;
    }

    /** @param index from 0 */
    public double at(int index) {
        return seconds[index];
    }

    /** Frames a second that the camera aims at. */
    public double nominalRate() {
        return nominalRate;
    }
}
