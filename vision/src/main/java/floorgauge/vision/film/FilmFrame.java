package floorgauge.vision.film;

import floorgauge.court.calibration.OpenCv;
import org.opencv.core.Mat;

/**
 * One picture of a film, a buffer that {@link FilmReader#read} fills again and again. Not thread-safe; a caller that
 * wants to decode ahead uses several of them.
 */
public final class FilmFrame implements AutoCloseable {

    private Mat bgr;
    private long index = -1;
    private double timeSeconds = Double.NaN;

    /** An empty buffer. */
    public FilmFrame() {
        OpenCv.load();
        bgr = new Mat();
    }

    /** The frame's place in the film, from 0; -1 before the first reading. */
    public long index() {
        return index;
    }

    /** Presentation time in seconds, strictly increasing through a film; NaN before the first reading. */
    public double timeSeconds() {
        return timeSeconds;
    }

    /** The picture, 8-bit BGR, upright; valid until the next reading into this buffer, which may overwrite it. */
    public Mat bgr() {
        return bgr;
    }

    void set(Mat picture, long newIndex, double newTimeSeconds) {
        bgr = picture;
        index = newIndex;
        timeSeconds = newTimeSeconds;
    }

    /** Frees the picture's memory. */
    @Override
    public void close() {
        bgr.release();
    }
}
