package floorgauge.app.export.clip;

/**
 * Size of a clip's pictures: the film's above, a strip of paper below. Both are even, as H.264 wants them.
 *
 * @param width pixels, at least 2
 * @param pictureHeight of the part that shows the film, pixels
 * @param height of the whole, pixels
 */
public record ClipSize(int width, int pictureHeight, int height) {

    /** Shape of the film for which the strip's height is given. */
    private static final double UNITS_WIDE = 1280;

    private static final int LEAST = 16;

    public ClipSize {
        if (width < LEAST || pictureHeight < LEAST || height <= pictureHeight) {
            throw new IllegalArgumentException(
                    "no room for a clip: " + width + " x " + pictureHeight + " of " + height);
        }
    }

    static ClipSize of(int filmWidth, int filmHeight) {
        int width = even(Math.max(LEAST, filmWidth));
        int picture = even(Math.max(LEAST, filmHeight));
        return new ClipSize(width, picture, picture + even((int) Math.ceil(PaperStrip.HEIGHT * width / UNITS_WIDE)));
    }

    private static int even(int size) {
        return size + (size & 1);
    }
}
