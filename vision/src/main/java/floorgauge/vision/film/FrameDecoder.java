package floorgauge.vision.film;

import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_decoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_flush_buffers;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_to_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_frame;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_packet;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;

import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;

/** Turns a container's packets into decoded pictures, in order of presentation; damaged ones are counted and left out. */
final class FrameDecoder implements AutoCloseable {

    /** Two, because more would take cores from the networks; the pictures do not depend on the number. */
    private static final int THREADS = 2;

    private final FilmContainer container;
    private final AVCodecContext context;
    private final AVPacket packet = av_packet_alloc();
    private final AVFrame frame = av_frame_alloc();
    private boolean inputEnded;
    private long damagedFrames;

    /** @throws FilmException if the codec is not one that this build can decode */
    FrameDecoder(FilmContainer container) {
        this.container = container;
        context = openContext(container);
    }

    private static AVCodecContext openContext(FilmContainer container) {
        int id = container.stream().codecpar().codec_id();
        AVCodec codec = avcodec_find_decoder(id);
        if (codec == null || codec.isNull()) {
            throw new FilmException(
                    container.film(),
                    "its codec (" + codecName(container) + ") cannot be decoded; convert it to H.264");
        }
        AVCodecContext opened = avcodec_alloc_context3(codec);
        avcodec_parameters_to_context(opened, container.stream().codecpar());
        opened.pkt_timebase(container.stream().time_base());
        opened.thread_count(THREADS);
        int code = avcodec_open2(opened, codec, (AVDictionary) null);
        if (code < 0) {
            avcodec_free_context(opened);
            throw new FilmException(
                    container.film(),
                    "its codec (" + codecName(container) + ") cannot be started (" + Ffmpeg.words(code)
                            + "); convert it to H.264");
        }
        return opened;
    }

    static String codecName(FilmContainer container) {
        return avcodec_get_name(container.stream().codecpar().codec_id()).getString();
    }

    /** The picture that the last successful {@link #next()} decoded; overwritten by the next one. */
    AVFrame frame() {
        return frame;
    }

    long damagedFrames() {
        return damagedFrames;
    }

    /** Decodes the next sound picture; false at the film's end. */
    boolean next() {
        while (true) {
            int code = avcodec_receive_frame(context, frame);
            if (code == AVERROR_EOF()) {
                return false;
            } else if (code == Ffmpeg.TRY_AGAIN) {
                feed();
            } else if (code < 0 || isDamaged()) {
                damagedFrames++;
                if (code < 0) {
                    feed();
                }
            } else {
                return true;
            }
        }
    }

    private boolean isDamaged() {
        return (frame.flags() & AVFrame.AV_FRAME_FLAG_CORRUPT) != 0 || frame.decode_error_flags() != 0;
    }

    /** Forgets what was fed in, after the container has moved elsewhere. */
    void flush() {
        avcodec_flush_buffers(context);
        inputEnded = false;
    }

    private void feed() {
        if (inputEnded) {
            return;
        }
        if (container.next(packet)) {
            if (avcodec_send_packet(context, packet) < 0) {
                damagedFrames++;
            }
            av_packet_unref(packet);
        } else {
            inputEnded = true;
            avcodec_send_packet(context, null);
        }
    }

    @Override
    public void close() {
        av_packet_free(packet);
        av_frame_free(frame);
        avcodec_free_context(context);
    }
}
