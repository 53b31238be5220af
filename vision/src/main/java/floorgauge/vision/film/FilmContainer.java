package floorgauge.vision.film;

import static org.bytedeco.ffmpeg.global.avcodec.AVDISCARD_ALL;
import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_side_data_get;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avformat.AVFMT_DURATION_FROM_BITRATE;
import static org.bytedeco.ffmpeg.global.avformat.AVFMT_TS_DISCONT;
import static org.bytedeco.ffmpeg.global.avformat.AVSEEK_FLAG_BACKWARD;
import static org.bytedeco.ffmpeg.global.avformat.AV_DISPOSITION_ATTACHED_PIC;
import static org.bytedeco.ffmpeg.global.avformat.av_guess_sample_aspect_ratio;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_seek_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;
import static org.bytedeco.ffmpeg.global.avutil.AV_TIME_BASE;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_display_rotation_get;
import static org.bytedeco.ffmpeg.global.avutil.av_q2d;

import java.nio.file.Path;
import java.util.Set;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;

/** An opened film file and its picture stream: hands out coded packets and what the container says about them. */
final class FilmContainer implements AutoCloseable {

    /** Readers of text, still pictures and play lists, which FFmpeg would open as if they were film. */
    private static final Set<String> NOT_FILM = Set.of(
            "tty", "image2", "image2pipe", "hls", "concat", "concatf", "dash", "lavfi", "ffmetadata", "sdp", "rtsp");

    private static final String STILL_PICTURE_SUFFIX = "_pipe";
    private static final int QUARTER_TURN = 90;
    private static final int FULL_TURN = 360;

    private final Path film;
    private final AVFormatContext context;
    private final AVStream stream;

    private FilmContainer(Path film, AVFormatContext context, AVStream stream) {
        this.film = film;
        this.context = context;
        this.stream = stream;
    }

    /** @throws FilmException if the file is missing, is no film or holds no moving picture */
    static FilmContainer open(Path film) {
        Ffmpeg.load();
        FilmFile.requireReadable(film);
        AVFormatContext context = openContext(film);
        try {
            requireFilm(film, context);
            int code = avformat_find_stream_info(context, (AVDictionary) null);
            if (code < 0) {
                throw new FilmException(
                        film, "its streams cannot be read (" + Ffmpeg.words(code) + "); copy the film again");
            }
            return new FilmContainer(film, context, pictureStream(film, context));
        } catch (RuntimeException e) {
            avformat_close_input(context);
            throw e;
        }
    }

    private static AVFormatContext openContext(Path film) {
        AVFormatContext context = avformat_alloc_context();
        context.flags(context.flags() | AVFormatContext.AVFMT_FLAG_DISCARD_CORRUPT);
        AVDictionary options = new AVDictionary();
        // A film may name other files or addresses; none of them is followed.
        av_dict_set(options, "protocol_whitelist", "file", 0);
        try (BytePointer name = FilmFile.nativeName(film)) {
            int code = avformat_open_input(context, name, null, options);
            if (code < 0) {
                throw new FilmException(
                        film,
                        "not a film that can be read (" + Ffmpeg.words(code)
                                + "); a film cut off while recording may lack its index: record or copy it again");
            }
        } finally {
            av_dict_free(options);
        }
        return context;
    }

    private static void requireFilm(Path film, AVFormatContext context) {
        String name = context.iformat().name().getString();
        if (NOT_FILM.contains(name) || name.endsWith(STILL_PICTURE_SUFFIX)) {
            throw new FilmException(film, "not a film (it reads as " + name + "); name a film file");
        }
    }

    private static AVStream pictureStream(Path film, AVFormatContext context) {
        AVStream best = null;
        for (int i = 0; i < context.nb_streams(); i++) {
            AVStream candidate = context.streams(i);
            if (isMovingPicture(candidate) && (best == null || pixels(candidate) > pixels(best))) {
                best = candidate;
            }
        }
        if (best == null) {
            throw new FilmException(
                    film,
                    "holds no moving picture: only sound or data, or its index is cut off; copy the film again or name another");
        }
        for (int i = 0; i < context.nb_streams(); i++) {
            if (i != best.index()) {
                context.streams(i).discard(AVDISCARD_ALL);
            }
        }
        return best;
    }

    private static boolean isMovingPicture(AVStream stream) {
        return stream.codecpar().codec_type() == AVMEDIA_TYPE_VIDEO
                && (stream.disposition() & AV_DISPOSITION_ATTACHED_PIC) == 0;
    }

    private static long pixels(AVStream stream) {
        return (long) stream.codecpar().width() * stream.codecpar().height();
    }

    Path film() {
        return film;
    }

    AVStream stream() {
        return stream;
    }

    /** FFmpeg's short name, the first where it has several. */
    String name() {
        return context.iformat().name().getString().split(",")[0];
    }

    double secondsPerTick() {
        return av_q2d(stream.time_base());
    }

    /**
     * The tick that counts as time 0. Containers of broadcast origin start their clock anywhere; the others' own zero is
     * the one that players show.
     */
    long zeroTick() {
        boolean clockStartsAnywhere = (context.iformat().flags() & AVFMT_TS_DISCONT) != 0;
        long start = stream.start_time();
        return clockStartsAnywhere && start != AV_NOPTS_VALUE ? start : 0;
    }

    /** Length of the picture stream as the container states it; NaN where it does not. */
    double statedSeconds() {
        if (stream.duration() != AV_NOPTS_VALUE && stream.duration() > 0) {
            return stream.duration() * secondsPerTick();
        }
        boolean guessed = context.duration_estimation_method() == AVFMT_DURATION_FROM_BITRATE;
        boolean known = context.duration() != AV_NOPTS_VALUE && context.duration() > 0;
        return known && !guessed ? context.duration() / (double) AV_TIME_BASE : Double.NaN;
    }

    /** Mean frames a second; NaN where the container does not say. */
    double framesPerSecond() {
        double mean = rate(stream.avg_frame_rate());
        return Double.isNaN(mean) ? rate(stream.r_frame_rate()) : mean;
    }

    private static double rate(AVRational rational) {
        return rational.num() > 0 && rational.den() > 0 ? av_q2d(rational) : Double.NaN;
    }

    /** Number of frames the container states, 0 where it does not. */
    long statedFrames() {
        return Math.max(0, stream.nb_frames());
    }

    /** Width over height of one stored pixel. */
    double pixelAspect() {
        AVRational aspect = av_guess_sample_aspect_ratio(context, stream, null);
        return aspect.num() > 0 && aspect.den() > 0 ? av_q2d(aspect) : 1;
    }

    /** Clockwise turn that makes the stored picture upright, to the nearest quarter: 0, 90, 180 or 270. */
    int rotationDegrees() {
        AVPacketSideData matrix = av_packet_side_data_get(
                stream.codecpar().coded_side_data(), stream.codecpar().nb_coded_side_data(), AV_PKT_DATA_DISPLAYMATRIX);
        if (matrix == null || matrix.isNull()) {
            return 0;
        }
        double anticlockwise = av_display_rotation_get(new IntPointer(matrix.data()));
        if (Double.isNaN(anticlockwise)) {
            return 0;
        }
        return Math.floorMod(Math.round(-anticlockwise / QUARTER_TURN) * QUARTER_TURN, FULL_TURN);
    }

    /**
     * Reads the picture stream's next packet.
     *
     * @return false at the end of the file, or where it can be read no further
     */
    boolean next(AVPacket packet) {
        while (av_read_frame(context, packet) >= 0) {
            if (packet.stream_index() == stream.index()) {
                return true;
            }
            av_packet_unref(packet);
        }
        return false;
    }

    /** Moves to the last place at or before a tick from which can be decoded; false where the container cannot. */
    boolean seek(long tick) {
        return av_seek_frame(context, stream.index(), tick, AVSEEK_FLAG_BACKWARD) >= 0;
    }

    @Override
    public void close() {
        avformat_close_input(context);
    }
}
