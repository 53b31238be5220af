package floorgauge.sampleclips.render.picture;

import java.util.Arrays;
import java.util.List;

/**
 * Bodies as the varnish mirrors them: the picture of the scene turned upside down through the floor, blurred, most of all
 * up and down, as a floor that is not quite even blurs it.
 */
final class Mirror {

    private static final int BAND_ROWS = 24;

    private final int width;
    private final int height;
    private final int across;
    private final int down;
    private float[] picture;
    private float[] spare;

    /** Four figures a pixel: red, green, blue, cover. */
    Mirror(int width, int height) {
        this.width = width;
        this.height = height;
        across = Math.max(1, width / 640);
        down = Math.max(1, height / 180);
        picture = new float[4 * width * height];
        spare = new float[4 * width * height];
    }

    float light(int index) {
        return picture[index / 3 * 4 + index % 3];
    }

    float cover(int pixel) {
        return picture[4 * pixel + 3];
    }

    void draw(List<Drawable> all, int sample, Parallel parallel, Band[] bands) {
        int count = (height + BAND_ROWS - 1) / BAND_ROWS;
        boolean[] busy = new boolean[count];
        parallel.forEach(count, (band, thread) -> busy[band] = drawBand(all, sample, band, bands[thread]));
        parallel.forEach(count, (band, thread) -> blurAcross(band, busy[band]));
        parallel.forEach(count, (band, thread) -> blurDown(band, near(busy, band)));
    }

    private static boolean near(boolean[] busy, int band) {
        return busy[band] || (band > 0 && busy[band - 1]) || (band + 1 < busy.length && busy[band + 1]);
    }

    private boolean drawBand(List<Drawable> all, int sample, int index, Band band) {
        int from = index * BAND_ROWS;
        int rows = Math.min(BAND_ROWS, height - from);
        band.begin(from, rows);
        band.clear();
        for (Drawable d : all) {
            band.draw(d, sample, false, 0);
        }
        boolean any = false;
        Arrays.fill(picture, 4 * from * width, 4 * (from + rows) * width, 0);
        for (int row = 0; row < rows; row++) {
            any = any || band.from[row] <= band.to[row];
            for (int x = band.from[row]; x <= band.to[row]; x++) {
                int i = row * width + x;
                if (band.inverseDepth[i] > 0) {
                    int to = 4 * ((from + row) * width + x);
                    System.arraycopy(band.light, 3 * i, picture, to, 3);
                    picture[to + 3] = 1;
                }
            }
        }
        return any;
    }

    private void blurAcross(int band, boolean busy) {
        int from = band * BAND_ROWS;
        int to = Math.min(height, from + BAND_ROWS);
        if (!busy) {
            Arrays.fill(spare, 4 * from * width, 4 * to * width, 0);
            return;
        }
        for (int y = from; y < to; y++) {
            slide(picture, spare, 4 * y * width, 4, width, across);
        }
    }

    private void blurDown(int band, boolean busy) {
        int from = band * BAND_ROWS;
        int to = Math.min(height, from + BAND_ROWS);
        if (!busy) {
            Arrays.fill(picture, 4 * from * width, 4 * to * width, 0);
            return;
        }
        float share = 1f / (2 * down + 1);
        int row = 4 * width;
        for (int y = from; y < to; y++) {
            Arrays.fill(picture, y * row, (y + 1) * row, 0);
            for (int k = Math.max(0, y - down); k <= Math.min(height - 1, y + down); k++) {
                for (int i = 0; i < row; i++) {
                    picture[y * row + i] += share * spare[k * row + i];
                }
            }
        }
    }

    private static void slide(float[] in, float[] out, int start, int step, int count, int reach) {
        float share = 1f / (2 * reach + 1);
        for (int x = 0; x < count; x++) {
            for (int c = 0; c < 4; c++) {
                float sum = 0;
                for (int k = Math.max(0, x - reach); k <= Math.min(count - 1, x + reach); k++) {
                    sum += in[start + k * step + c];
                }
                out[start + x * step + c] = sum * share;
            }
        }
    }
}
