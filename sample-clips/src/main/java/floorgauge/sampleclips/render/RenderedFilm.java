package floorgauge.sampleclips.render;

import java.nio.file.Path;

/**
 * A film that was rendered.
 *
 * @param film H.264 in MP4
 * @param truth JSON, see {@code docs/truth.md}
 * @param tracks MOTChallenge text
 * @param poses COCO keypoints JSON
 * @param frames number of frames
 * @param rawDigest SHA-256 over the bytes of all frames before encoding, hexadecimal
 */
public record RenderedFilm(Path film, Path truth, Path tracks, Path poses, int frames, String rawDigest) {}
