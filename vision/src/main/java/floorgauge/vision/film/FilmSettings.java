package floorgauge.vision.film;

/**
 * How a {@link FilmWriter} codes.
 *
 * @param width of the pictures, pixels; an odd width is stored one pixel wider, its edge repeated
 * @param height of the pictures, pixels; an odd height is stored one pixel higher, its edge repeated
 * @param ticksPerSecond resolution of the presentation times; 90000 holds all usual rates exactly
 * @param nominalFramesPerSecond what the rate control reckons with; times need not follow it
 * @param bitsPerSecond target rate
 * @param rotationDegrees clockwise turn that players are told to apply: 0, 90, 180 or 270
 */
public record FilmSettings(
        int width,
        int height,
        int ticksPerSecond,
        double nominalFramesPerSecond,
        long bitsPerSecond,
        int rotationDegrees) {

    private static final int BROADCAST_CLOCK = 90_000;

    /** Bits a pixel a frame at which moving people on a still floor show no blocks (from trials). */
    private static final double BITS_PER_PIXEL = 0.15;

    /** The smallest picture that the H.264 encoder takes. */
    private static final int MIN_SIZE = 16;

    public FilmSettings {
        if (width < MIN_SIZE || height < MIN_SIZE) {
            throw new IllegalArgumentException(
                    "pictures must be at least " + MIN_SIZE + " pixels wide and high: " + width + " x " + height);
        }
        if (ticksPerSecond < 1 || !(nominalFramesPerSecond > 0) || bitsPerSecond < 1) {
            throw new IllegalArgumentException("rates must be positive: " + ticksPerSecond + " ticks, "
                    + nominalFramesPerSecond + " frames, " + bitsPerSecond + " bits a second");
        }
        if (rotationDegrees < 0 || rotationDegrees > 270 || rotationDegrees % 90 != 0) {
            throw new IllegalArgumentException("rotation must be 0, 90, 180 or 270: " + rotationDegrees);
        }
    }

    /** Upright film of good quality on a 90 kHz clock. */
    public static FilmSettings of(int width, int height, double framesPerSecond) {
        long bits = Math.max(1, Math.round(BITS_PER_PIXEL * width * height * framesPerSecond));
        return new FilmSettings(width, height, BROADCAST_CLOCK, framesPerSecond, bits, 0);
    }

    public FilmSettings withBitsPerSecond(long bits) {
        return new FilmSettings(width, height, ticksPerSecond, nominalFramesPerSecond, bits, rotationDegrees);
    }

    public FilmSettings withTicksPerSecond(int ticks) {
        return new FilmSettings(width, height, ticks, nominalFramesPerSecond, bitsPerSecond, rotationDegrees);
    }

    public FilmSettings withRotationDegrees(int degrees) {
        return new FilmSettings(width, height, ticksPerSecond, nominalFramesPerSecond, bitsPerSecond, degrees);
    }
}
