package floorgauge.court.lines;

import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * What a static camera sees when nobody stands in the way: the median over frames, colour by colour. A place that people
 * cover in under half of the frames shows the floor.
 */
public final class BackgroundPicture {

    private BackgroundPicture() {}

    /**
     * @param frames at least one, all of one size, 8 bits, BGR; left unchanged
     * @param widthPixels of the result, at most that of the frames
     * @return 8 bits, BGR; the caller releases it
     * @throws IllegalArgumentException where there is no frame, or frames differ in size or kind
     */
    public static Mat median(List<Mat> frames, int widthPixels) {
        if (frames.isEmpty()) {
            throw new IllegalArgumentException("a background needs at least one frame");
        }
        Mat first = frames.get(0);
        int width = Math.min(widthPixels, first.cols());
        int height = (int) Math.max(1, Math.round((double) first.rows() * width / first.cols()));
        byte[][] pixels = new byte[frames.size()][];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = pixels(frames.get(i), first, width, height);
        }
        Mat median = new Mat(height, width, CvType.CV_8UC3);
        median.put(0, 0, medians(pixels));
        return median;
    }

    private static byte[] pixels(Mat frame, Mat first, int width, int height) {
        if (frame.type() != CvType.CV_8UC3 || frame.rows() != first.rows() || frame.cols() != first.cols()) {
            throw new IllegalArgumentException("frames must all be 8-bit BGR of one size: " + frame + ", " + first);
        }
        byte[] bytes = new byte[3 * width * height];
        if (frame.cols() == width) {
            frame.get(0, 0, bytes);
            return bytes;
        }
        Mat small = new Mat();
        try {
            Imgproc.resize(frame, small, new Size(width, height), 0, 0, Imgproc.INTER_AREA);
            small.get(0, 0, bytes);
        } finally {
            small.release();
        }
        return bytes;
    }

    private static byte[] medians(byte[][] pixels) {
        byte[] result = new byte[pixels[0].length];
        int[] values = new int[pixels.length];
        for (int p = 0; p < result.length; p++) {
            for (int i = 0; i < values.length; i++) {
                values[i] = pixels[i][p] & 0xff;
            }
            sort(values);
            result[p] = (byte) values[values.length / 2];
        }
        return result;
    }

    /** By insertion: frames are few, and this runs for every channel of every pixel. */
    private static void sort(int[] values) {
        for (int i = 1; i < values.length; i++) {
            int value = values[i];
            int k = i - 1;
            while (k >= 0 && values[k] > value) {
                values[k + 1] = values[k];
                k--;
            }
            values[k + 1] = value;
        }
    }
}
