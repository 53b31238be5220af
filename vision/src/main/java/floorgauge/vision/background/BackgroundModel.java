package floorgauge.vision.background;

import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import org.opencv.core.Size;

/**
 * The empty hall over a film, a picture a stretch of time. Owns native memory; close it when the film is done.
 */
public final class BackgroundModel implements AutoCloseable {

    /** Width of the small pictures, and of masks: a far player is still ten of these pixels high. */
    private static final int WIDTH = 320;

    /** A pixel moves where a channel differs by more than this, of 255 ... */
    static final int LEAST_DIFFERENCE = 18;

    /** ... and more than this many median deviations. */
    static final int DEVIATIONS = 5;

    /** With more of the picture moving than this in half the samples, the camera does. */
    private static final double MOST_MOVING = 0.3;

    private final List<Stretch> stretches;

    /**
     * One stretch of the film.
     *
     * @param startSeconds when it begins; it lasts to the next one's
     * @param median 8-bit BGR
     * @param spread median absolute deviation of each pixel and channel
     * @param fixed whether the camera stood still
     */
    record Stretch(double startSeconds, Mat median, Mat spread, boolean fixed) {}

    BackgroundModel(List<Stretch> stretches) {
        this.stretches = List.copyOf(stretches);
    }

    static Size size(int width, int height) {
        int w = Math.min(WIDTH, width);
        return new Size(w, Math.max(1, Math.round((double) height * w / width)));
    }

    static boolean isStatic(List<byte[]> samples, byte[] median, byte[] spread) {
        double[] moving = new double[samples.size()];
        for (int k = 0; k < moving.length; k++) {
            int count = 0;
            for (int i = 0; i < median.length; i++) {
                int limit = Math.max(LEAST_DIFFERENCE, DEVIATIONS * (spread[i] & 0xFF));
                if (Math.abs((samples.get(k)[i] & 0xFF) - (median[i] & 0xFF)) > limit) {
                    count++;
                }
            }
            moving[k] = (double) count / median.length;
        }
        java.util.Arrays.sort(moving);
        return moving[moving.length / 2] <= MOST_MOVING;
    }

    /** The stretch at an instant; empty where the camera moves or too little was seen. */
    Optional<Stretch> at(double timeSeconds) {
        Stretch found = null;
        for (Stretch stretch : stretches) {
            if (found == null || stretch.startSeconds() <= timeSeconds) {
                found = stretch;
            }
        }
        return Optional.ofNullable(found).filter(Stretch::fixed);
    }

    /** Whether the camera stands still at an instant, so that there is a background. */
    public boolean isKnownAt(double timeSeconds) {
        return at(timeSeconds).isPresent();
    }

    /** Whether there is a background all through the film. */
    public boolean isKnown() {
        return !stretches.isEmpty() && stretches.stream().allMatch(Stretch::fixed);
    }

    @Override
    public void close() {
        for (Stretch stretch : stretches) {
            stretch.median().release();
            stretch.spread().release();
        }
    }
}
