package floorgauge.vision.film;

import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;

import floorgauge.court.calibration.OpenCv;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avutil.AVFrame;

/**
 * Reads a film's pictures one after the other: any container and codec of FFmpeg's LGPL build, turned upright, with square
 * pixels, at the size asked for. Times are the container's presentation times, so films of variable frame rate keep
 * theirs. The same file gives the same pictures and times on every reading.
 *
 * <p>Not thread-safe. Decoding itself uses two threads; memory does not grow with the film.
 */
public final class FilmReader implements AutoCloseable {

    /** A film may end this long before its stated end without being called cut off: containers round. */
    private static final double END_TOLERANCE_SECONDS = 0.25;

    private final FilmContainer container;
    private final FrameDecoder decoder;
    private final PictureConverter converter;
    private final FilmInfo info;
    private final double secondsPerTick;
    private final double frameSeconds;
    private final long zeroTick;
    private boolean pending;
    private boolean skipped;
    private boolean ended;
    private long framesRead;
    private double lastTime = Double.NEGATIVE_INFINITY;
    private double endSeconds;

    private FilmReader(FilmContainer container, FrameDecoder decoder, int maxWidth) {
        this.container = container;
        this.decoder = decoder;
        secondsPerTick = container.secondsPerTick();
        zeroTick = container.zeroTick();
        pending = decoder.next();
        if (!pending) {
            throw new FilmException(
                    container.film(), "holds no picture that can be decoded; it is damaged or cut off: copy it again");
        }
        info = describe(container, decoder.frame(), maxWidth);
        // Where neither the container nor its times tell, 25 frames a second (common practice).
        frameSeconds = Double.isNaN(info.nominalFramesPerSecond()) ? 0.04 : 1 / info.nominalFramesPerSecond();
        converter = new PictureConverter(info.width(), info.height(), info.rotationDegrees());
    }

    /**
     * Opens a film at its own size.
     *
     * @throws FilmException if there is no such file, or it is not a film, or holds no picture that can be decoded
     */
    public static FilmReader open(Path film) {
        return open(film, Integer.MAX_VALUE);
    }

    /**
     * Opens a film whose pictures are at most so wide; wider ones are scaled down while they are decoded, in proportion.
     *
     * @param maxWidth of the upright picture, pixels, at least 1
     * @throws FilmException if there is no such file, or it is not a film, or holds no picture that can be decoded
     */
    public static FilmReader open(Path film, int maxWidth) {
        if (maxWidth < 1) {
            throw new IllegalArgumentException("width must be positive: " + maxWidth);
        }
        OpenCv.load();
        FilmContainer container = FilmContainer.open(film);
        FrameDecoder decoder = null;
        try {
            decoder = new FrameDecoder(container);
            return new FilmReader(container, decoder, maxWidth);
        } catch (RuntimeException e) {
            if (decoder != null) {
                decoder.close();
            }
            container.close();
            throw e;
        }
    }

    private static FilmInfo describe(FilmContainer container, AVFrame first, int maxWidth) {
        int rotation = container.rotationDegrees();
        boolean quarter = rotation % 180 != 0;
        double squareWidth = first.width() * container.pixelAspect();
        double uprightWidth = quarter ? first.height() : squareWidth;
        double uprightHeight = quarter ? squareWidth : first.height();
        double scale = Math.min(1, maxWidth / uprightWidth);
        double seconds = container.statedSeconds();
        double rate = container.framesPerSecond();
        return new FilmInfo(
                atLeastOne(uprightWidth * scale),
                atLeastOne(uprightHeight * scale),
                first.width(),
                first.height(),
                rotation,
                seconds,
                frameCount(container.statedFrames(), seconds * rate),
                rate,
                container.name(),
                FrameDecoder.codecName(container));
    }

    private static int atLeastOne(double pixels) {
        return (int) Math.max(1, Math.round(pixels));
    }

    private static long frameCount(long stated, double fromDuration) {
        return stated > 0 || Double.isNaN(fromDuration) ? stated : Math.round(fromDuration);
    }

    /** What the container says, and the size of the pictures. */
    public FilmInfo info() {
        return info;
    }

    /**
     * Reads the next picture.
     *
     * @param into overwritten with the picture, its place and its time
     * @return false at the film's end; the buffer is then left as it was
     */
    public boolean read(FilmFrame into) {
        while (!ended && (pending || decoder.next())) {
            pending = false;
            AVFrame frame = decoder.frame();
            double time = timeOf(frame);
            // A picture whose time does not move on is a broken container's repetition; it would be seen by no viewer.
            if (time > lastTime) {
                lastTime = time;
                endSeconds = time + (frame.duration() > 0 ? frame.duration() * secondsPerTick : frameSeconds);
                into.set(converter.convert(frame, into.bgr()), skipped ? -1 : framesRead, time);
                framesRead++;
                return true;
            }
        }
        ended = true;
        return false;
    }

    /**
     * Moves on, so that the next picture read is the first at or after a moment. Pictures read from then on have the index
     * -1: those left out were not counted. Where the container has no way to skip, the film is decoded up to the moment.
     *
     * @param timeSeconds presentation time, after that of the last picture read
     */
    public void skipTo(double timeSeconds) {
        if (!(timeSeconds > lastTime)) {
            throw new IllegalArgumentException(
                    "a film is skipped forwards, not from " + lastTime + " s to " + timeSeconds);
        }
        skipped = true;
        if (container.seek(zeroTick + (long) Math.floor(timeSeconds / secondsPerTick))) {
            decoder.flush();
            pending = false;
        }
        while (pending || decoder.next()) {
            pending = timeOf(decoder.frame()) >= timeSeconds - secondsPerTick / 2;
            if (pending) {
                return;
            }
        }
        ended = true;
    }

    private double timeOf(AVFrame frame) {
        long tick = frame.best_effort_timestamp();
        if (tick == AV_NOPTS_VALUE) {
            return framesRead == 0 ? 0 : lastTime + frameSeconds;
        }
        return (tick - zeroTick) * secondsPerTick;
    }

    /**
     * What the film did not yield; complete once {@link #read} has returned false.
     *
     * @throws IllegalStateException before that
     */
    public FilmShortfall shortfall() {
        if (!ended) {
            throw new IllegalStateException("the film has not been read to its end");
        }
        double missing = info.durationSeconds() - endSeconds;
        return new FilmShortfall(missing > END_TOLERANCE_SECONDS ? missing : 0, decoder.damagedFrames());
    }

    /** Frees the file and the decoder. */
    @Override
    public void close() {
        converter.close();
        decoder.close();
        container.close();
    }
}
