package floorgauge.vision.film;

import static org.bytedeco.ffmpeg.global.avutil.AV_LOG_QUIET;
import static org.bytedeco.ffmpeg.global.avutil.av_log_set_level;
import static org.bytedeco.ffmpeg.global.avutil.av_strerror;

import java.nio.charset.StandardCharsets;
import org.bytedeco.javacpp.Loader;

/**
 * The one place that loads FFmpeg and sets what holds for the whole process: its own messages are silenced, because every
 * failure is reported by this package in one line.
 */
final class Ffmpeg {

    /** "Try again": the decoder wants more input. The value of EAGAIN differs between systems. */
    static final int TRY_AGAIN = Loader.getPlatform().startsWith("macosx") ? -35 : -11;

    private static final int MESSAGE_BYTES = 256;

    static {
        av_log_set_level(AV_LOG_QUIET);
    }

    private Ffmpeg() {}

    /** Loads the libraries; cheap after the first call. */
    static void load() {
        // The static initialiser has done it.
    }

    /** FFmpeg's own words for an error code. */
    static String words(int code) {
        byte[] text = new byte[MESSAGE_BYTES];
        av_strerror(code, text, text.length);
        int length = 0;
        while (length < text.length && text[length] != 0) {
            length++;
        }
        return new String(text, 0, length, StandardCharsets.UTF_8);
    }
}
