package floorgauge.vision.film;

import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_JPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_UNSPECIFIED;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGR24;
import static org.bytedeco.ffmpeg.global.swscale.SWS_AREA;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BILINEAR;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_DEFAULT;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU709;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCachedContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;

import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * Turns decoded pictures of any pixel format into upright BGR of one size, written straight into an OpenCV matrix's
 * memory.
 */
final class PictureConverter implements AutoCloseable {

    /** Rows to spare below a picture: swscale's vector code may write a little past the last pixel. */
    private static final int SPARE_ROWS = 1;

    /** Unmarked film of at least this height is taken for ITU-R BT.709, lower for BT.601 (common practice). */
    private static final int HIGH_DEFINITION_HEIGHT = 720;

    private static final int UNIT_16_16 = 1 << 16;

    private final int width;
    private final int height;
    private final int rotationDegrees;
    private final PointerPointer<NativeBytes> planes = new PointerPointer<>(4);
    private final IntPointer strides = new IntPointer(4L);
    private Mat beforeTurn = new Mat();
    private SwsContext scaler;
    private Source source;

    /** All that the colour conversion depends on; it may change within a film. */
    private record Source(int width, int height, int format, int space, int range) {}

    /**
     * @param width of the upright picture
     * @param height of the upright picture
     * @param rotationDegrees clockwise turn that makes the stored picture upright
     */
    PictureConverter(int width, int height, int rotationDegrees) {
        this.width = width;
        this.height = height;
        this.rotationDegrees = rotationDegrees;
    }

    /**
     * @param frame a decoded picture
     * @param buffer a matrix to write into where its size fits
     * @return the matrix written: the buffer, or a new one in its place
     */
    Mat convert(AVFrame frame, Mat buffer) {
        if (rotationDegrees == 0) {
            return scale(frame, buffer, width, height);
        }
        boolean quarter = rotationDegrees % 180 != 0;
        beforeTurn = scale(frame, beforeTurn, quarter ? height : width, quarter ? width : height);
        Core.rotate(beforeTurn, buffer, turnCode());
        return buffer;
    }

    private int turnCode() {
        return switch (rotationDegrees) {
            case 90 -> Core.ROTATE_90_CLOCKWISE;
            case 180 -> Core.ROTATE_180;
            default -> Core.ROTATE_90_COUNTERCLOCKWISE;
        };
    }

    private Mat scale(AVFrame frame, Mat buffer, int targetWidth, int targetHeight) {
        Mat target = fits(buffer, targetWidth, targetHeight) ? buffer : roomy(targetWidth, targetHeight);
        prepareScaler(frame, targetWidth, targetHeight);
        planes.put(0, new NativeBytes(target.dataAddr()));
        strides.put(0, Math.toIntExact(target.step1(0)));
        sws_scale(scaler, frame.data(), frame.linesize(), 0, frame.height(), planes, strides);
        if (target != buffer) {
            buffer.release();
        }
        return target;
    }

    private static boolean fits(Mat buffer, int targetWidth, int targetHeight) {
        return buffer.rows() == targetHeight && buffer.cols() == targetWidth && buffer.type() == CvType.CV_8UC3;
    }

    private static Mat roomy(int targetWidth, int targetHeight) {
        Mat withSpare = new Mat(targetHeight + SPARE_ROWS, targetWidth, CvType.CV_8UC3);
        Mat view = withSpare.rowRange(0, targetHeight);
        withSpare.release();
        return view;
    }

    private void prepareScaler(AVFrame frame, int targetWidth, int targetHeight) {
        boolean smaller = targetWidth < frame.width() || targetHeight < frame.height();
        scaler = sws_getCachedContext(
                scaler,
                frame.width(),
                frame.height(),
                frame.format(),
                targetWidth,
                targetHeight,
                AV_PIX_FMT_BGR24,
                smaller ? SWS_AREA : SWS_BILINEAR,
                null,
                null,
                (DoublePointer) null);
        Source current =
                new Source(frame.width(), frame.height(), frame.format(), frame.colorspace(), frame.color_range());
        if (!current.equals(source)) {
            source = current;
            setColours(frame);
        }
    }

    private void setColours(AVFrame frame) {
        int space = frame.colorspace();
        if (space == AVCOL_SPC_UNSPECIFIED) {
            space = frame.height() >= HIGH_DEFINITION_HEIGHT ? SWS_CS_ITU709 : SWS_CS_DEFAULT;
        }
        int fullRange = frame.color_range() == AVCOL_RANGE_JPEG ? 1 : 0;
        IntPointer coefficients = sws_getCoefficients(space);
        sws_setColorspaceDetails(scaler, coefficients, fullRange, coefficients, 1, 0, UNIT_16_16, UNIT_16_16);
    }

    @Override
    public void close() {
        sws_freeContext(scaler);
        planes.close();
        strides.close();
        beforeTurn.release();
    }
}
