package floorgauge.vision.film;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_side_data_new;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder_by_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.AVIO_FLAG_WRITE;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_closep;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_PRI_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_MPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGR24;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.av_d2q;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_display_rotation_set;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_make_writable;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;
import static org.bytedeco.ffmpeg.global.avutil.av_strdup;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BILINEAR;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU709;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCachedContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;

import floorgauge.court.calibration.OpenCv;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * Writes pictures as H.264 in MP4 with their presentation times, index first, so that a browser can play the film while it
 * loads. Writes straight to the path given: write beside the final name and move the film there. The film is whole once
 * {@link #close} has returned.
 *
 * <p>Not thread-safe. The same pictures and times give the same bytes.
 */
public final class FilmWriter implements AutoCloseable {

    private static final double KEY_FRAME_SECONDS = 2;
    private static final int UNIT_16_16 = 1 << 16;
    private static final int MATRIX_BYTES = 9 * Integer.BYTES;
    private static final int RATE_DENOMINATOR_LIMIT = 1001 * 60;

    private final Path film;
    private final FilmSettings settings;
    private final AVFormatContext format = new AVFormatContext(null);
    private final AVCodecContext encoder;
    private final AVStream stream;
    private final AVPacket packet = av_packet_alloc();
    private final AVFrame frame = av_frame_alloc();
    private final PointerPointer<NativeBytes> planes = new PointerPointer<>(4);
    private final IntPointer strides = new IntPointer(4L);
    private final Mat even = new Mat();
    private final SwsContext scaler;
    private long lastTick = Long.MIN_VALUE;
    private boolean closed;

    private FilmWriter(Path film, FilmSettings settings) {
        this.film = film;
        this.settings = settings;
        avformat_alloc_output_context2(format, null, "mp4", null);
        encoder = openEncoder();
        stream = avformat_new_stream(format, null);
        stream.time_base(encoder.time_base());
        stream.avg_frame_rate(encoder.framerate());
        avcodec_parameters_from_context(stream.codecpar(), encoder);
        setRotation(stream.codecpar(), settings.rotationDegrees());
        frame.format(AV_PIX_FMT_YUV420P);
        frame.width(encoder.width());
        frame.height(encoder.height());
        av_frame_get_buffer(frame, 0);
        scaler = openScaler(encoder.width(), encoder.height());
    }

    /**
     * Starts a film.
     *
     * @param film written anew
     * @throws FilmException if the file cannot be written
     */
    public static FilmWriter create(Path film, FilmSettings settings) {
        Ffmpeg.load();
        OpenCv.load();
        FilmWriter writer = new FilmWriter(film, settings);
        try {
            writer.openFile();
        } catch (FilmException e) {
            writer.free();
            throw e;
        }
        return writer;
    }

    private AVCodecContext openEncoder() {
        AVCodec codec = avcodec_find_encoder_by_name("libopenh264");
        if (codec == null || codec.isNull()) {
            throw new IllegalStateException("this build of FFmpeg lacks the OpenH264 encoder");
        }
        AVCodecContext context = avcodec_alloc_context3(codec);
        context.width(even(settings.width()));
        context.height(even(settings.height()));
        context.pix_fmt(AV_PIX_FMT_YUV420P);
        context.time_base(av_make_q(1, settings.ticksPerSecond()));
        context.framerate(av_d2q(settings.nominalFramesPerSecond(), RATE_DENOMINATOR_LIMIT));
        context.bit_rate(settings.bitsPerSecond());
        context.gop_size((int) Math.max(1, Math.round(KEY_FRAME_SECONDS * settings.nominalFramesPerSecond())));
        context.color_range(AVCOL_RANGE_MPEG);
        context.colorspace(AVCOL_SPC_BT709);
        context.color_primaries(AVCOL_PRI_BT709);
        context.color_trc(AVCOL_TRC_BT709);
        context.flags(context.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        context.thread_count(1);
        require(avcodec_open2(context, codec, (AVDictionary) null), "the encoder does not start");
        return context;
    }

    private static int even(int size) {
        return size + (size & 1);
    }

    private static void setRotation(AVCodecParameters parameters, int degrees) {
        if (degrees == 0) {
            return;
        }
        PointerPointer<AVPacketSideData> list = new PointerPointer<>(1);
        list.put(0, (AVPacketSideData) null);
        IntPointer count = new IntPointer(1L).put(0);
        AVPacketSideData matrix = av_packet_side_data_new(list, count, AV_PKT_DATA_DISPLAYMATRIX, MATRIX_BYTES, 0);
        av_display_rotation_set(new IntPointer(matrix.data()), degrees);
        parameters.coded_side_data(new AVPacketSideData(list.get()));
        parameters.nb_coded_side_data(count.get());
    }

    private void openFile() {
        AVIOContext file = new AVIOContext(null);
        try (BytePointer name = FilmFile.nativeName(film)) {
            require(
                    avio_open(file, name, AVIO_FLAG_WRITE),
                    "cannot be written; check the folder and the room on the disk");
            format.pb(file);
            format.url(new BytePointer(av_strdup(name)));
        }
        AVDictionary options = new AVDictionary();
        av_dict_set(options, "movflags", "+faststart", 0);
        // Without it the muxer writes its own version and the present time into the file.
        av_dict_set(options, "fflags", "+bitexact", 0);
        int code = avformat_write_header(format, options);
        av_dict_free(options);
        require(code, "cannot be written; check the room on the disk");
    }

    private static SwsContext openScaler(int width, int height) {
        SwsContext context = sws_getCachedContext(
                null,
                width,
                height,
                AV_PIX_FMT_BGR24,
                width,
                height,
                AV_PIX_FMT_YUV420P,
                SWS_BILINEAR,
                null,
                null,
                (DoublePointer) null);
        IntPointer coefficients = sws_getCoefficients(SWS_CS_ITU709);
        sws_setColorspaceDetails(context, coefficients, 1, coefficients, 0, 0, UNIT_16_16, UNIT_16_16);
        return context;
    }

    /**
     * Adds a picture.
     *
     * @param bgr 8-bit BGR of the settings' size; not kept
     * @param timeSeconds presentation time, at least one tick after the last picture's, not negative
     * @throws FilmException if the disk is full or the file can no longer be written
     */
    public void write(Mat bgr, double timeSeconds) {
        if (bgr.type() != CvType.CV_8UC3 || bgr.cols() != settings.width() || bgr.rows() != settings.height()) {
            throw new IllegalArgumentException(
                    "picture must be 8-bit BGR, " + settings.width() + " x " + settings.height() + ": " + bgr);
        }
        long tick = Math.round(timeSeconds * settings.ticksPerSecond());
        if (!(timeSeconds >= 0) || tick <= lastTick) {
            throw new IllegalArgumentException("times must increase from 0: " + timeSeconds + " s");
        }
        lastTick = tick;
        fillFrame(evenSized(bgr));
        frame.pts(tick);
        require(avcodec_send_frame(encoder, frame), "a picture cannot be coded");
        drain();
    }

    private Mat evenSized(Mat bgr) {
        int right = bgr.cols() & 1;
        int below = bgr.rows() & 1;
        if (right == 0 && below == 0) {
            return bgr;
        }
        Core.copyMakeBorder(bgr, even, 0, below, 0, right, Core.BORDER_REPLICATE);
        return even;
    }

    private void fillFrame(Mat bgr) {
        av_frame_make_writable(frame);
        planes.put(0, new NativeBytes(bgr.dataAddr()));
        strides.put(0, Math.toIntExact(bgr.step1(0)));
        sws_scale(scaler, planes, strides, 0, bgr.rows(), frame.data(), frame.linesize());
    }

    private void drain() {
        while (avcodec_receive_packet(encoder, packet) >= 0) {
            packet.stream_index(stream.index());
            packet.duration(Math.max(1, Math.round(settings.ticksPerSecond() / settings.nominalFramesPerSecond())));
            av_packet_rescale_ts(packet, encoder.time_base(), stream.time_base());
            require(av_interleaved_write_frame(format, packet), "cannot be written; check the room on the disk");
        }
    }

    private void require(int code, String trouble) {
        if (code < 0) {
            throw new FilmException(film, trouble + " (" + Ffmpeg.words(code) + ")");
        }
    }

    /** Writes what is left and the index. */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        try {
            if (lastTick != Long.MIN_VALUE) {
                avcodec_send_frame(encoder, null);
                drain();
            }
            require(av_write_trailer(format), "cannot be written; check the room on the disk");
        } finally {
            free();
        }
    }

    private void free() {
        if (format.pb() != null) {
            avio_closep(format.pb());
        }
        avformat_free_context(format);
        avcodec_free_context(encoder);
        av_packet_free(packet);
        av_frame_free(frame);
        sws_freeContext(scaler);
        planes.close();
        strides.close();
        even.release();
    }
}
