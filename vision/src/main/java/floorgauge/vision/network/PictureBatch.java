package floorgauge.vision.network;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * Pictures of one size side by side in memory that OpenCV writes and PyTorch reads without a copy: NHWC, 8-bit, blue first.
 * Reused; grows to the largest batch asked for.
 */
final class PictureBatch {

    private static final int CHANNELS = 3;

    private ByteBuffer memory = ByteBuffer.allocateDirect(0);
    private int count;
    private int height;
    private int width;

    /** Sets the batch's shape; the pictures' contents are undefined until they are written. */
    void shape(int newCount, int newHeight, int newWidth) {
        int bytes = Math.multiplyExact(Math.multiplyExact(newCount, newHeight), Math.multiplyExact(newWidth, CHANNELS));
        if (memory.capacity() < bytes) {
            memory = ByteBuffer.allocateDirect(bytes).order(ByteOrder.nativeOrder());
        }
        count = newCount;
        height = newHeight;
        width = newWidth;
    }

    int count() {
        return count;
    }

    int height() {
        return height;
    }

    int width() {
        return width;
    }

    /** One picture as a matrix on the batch's own memory; valid until the next {@link #shape}. */
    Mat picture(int index) {
        int bytes = height * width * CHANNELS;
        return new Mat(height, width, CvType.CV_8UC3, memory.slice(index * bytes, bytes));
    }

    /** All pictures, in order. */
    ByteBuffer bytes() {
        return memory.slice(0, count * height * width * CHANNELS);
    }
}
