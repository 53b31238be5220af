package floorgauge.vision.film;

import java.util.Objects;

/**
 * What a film's container says about its picture, and the size in which it is read.
 *
 * @param width of the pictures handed out, pixels: upright, square pixels, scaled as asked
 * @param height of the pictures handed out, pixels
 * @param storedWidth of the coded picture, before turning and scaling, pixels
 * @param storedHeight of the coded picture, pixels
 * @param rotationDegrees clockwise turn that makes the stored picture upright: 0, 90, 180 or 270
 * @param durationSeconds as the container states it; NaN where it does not
 * @param estimatedFrameCount frames in the whole film, for progress only; 0 where it cannot be told
 * @param nominalFramesPerSecond mean rate stated by the container; NaN where it does not. Frames carry their own times,
 *     which need not be evenly spaced
 * @param container FFmpeg's short name of the container
 * @param codec FFmpeg's short name of the codec
 */
public record FilmInfo(
        int width,
        int height,
        int storedWidth,
        int storedHeight,
        int rotationDegrees,
        double durationSeconds,
        long estimatedFrameCount,
        double nominalFramesPerSecond,
        String container,
        String codec) {

    public FilmInfo {
        if (width < 1 || height < 1 || storedWidth < 1 || storedHeight < 1) {
            throw new IllegalArgumentException("sizes must be positive: " + width + " x " + height + " from "
                    + storedWidth + " x " + storedHeight);
        }
        if (rotationDegrees < 0 || rotationDegrees > 270 || rotationDegrees % 90 != 0) {
            throw new IllegalArgumentException("rotation must be 0, 90, 180 or 270: " + rotationDegrees);
        }
        if (estimatedFrameCount < 0) {
            throw new IllegalArgumentException("frame count must not be negative: " + estimatedFrameCount);
        }
        Objects.requireNonNull(container, "container");
        Objects.requireNonNull(codec, "codec");
    }
}
