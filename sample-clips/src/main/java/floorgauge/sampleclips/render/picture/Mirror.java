package floorgauge.sampleclips.render.picture;

import java.util.Arrays;
import java.util.List;

/**
 * Bodies as the varnish mirrors them: the picture of the scene turned upside down through the floor, blurred, most of all
 * up and down, as a floor that is not quite even blurs it. Of each row only the columns between the first and the last with
 * something in them are kept.
 */
final class Mirror {

    private static final int BAND_ROWS = 24;

    private final int width;
    private final int height;
    private final int across;
    private final int down;
    /** Four figures a pixel: red, green, blue, cover. */
    private final Strips sharp;

    private final Strips smeared;
    private final Strips blurred;

    /** A picture of which each row holds the columns from {@code from} to {@code to}; the rest is 0, whatever stands there. */
    private static final class Strips {
        private final float[] picture;
        private final int[] from;
        private final int[] to;

        Strips(int width, int height) {
            picture = new float[4 * width * height];
            from = new int[height];
            to = new int[height];
        }
    }

    Mirror(int width, int height) {
        this.width = width;
        this.height = height;
        across = Math.max(1, width / 640);
        down = Math.max(1, height / 180);
        sharp = new Strips(width, height);
        smeared = new Strips(width, height);
        blurred = new Strips(width, height);
    }

    /** First column of a row with a mirrored body; beyond the last where there is none. */
    int from(int row) {
        return blurred.from[row];
    }

    /** Last column of a row with a mirrored body. */
    int to(int row) {
        return blurred.to[row];
    }

    /** Light of a pixel between the row's first and last column. */
    float light(int pixel, int channel) {
        return blurred.picture[4 * pixel + channel];
    }

    /** Share of a pixel between the row's first and last column that mirrored bodies cover. */
    float cover(int pixel) {
        return blurred.picture[4 * pixel + 3];
    }

    void draw(List<Drawable> all, int sample, Parallel parallel, Band[] bands) {
        int count = (height + BAND_ROWS - 1) / BAND_ROWS;
        parallel.forEach(count, (band, thread) -> drawBand(all, sample, band * BAND_ROWS, bands[thread]));
        parallel.forEach(count, (band, thread) -> blurDown(band * BAND_ROWS));
    }

    private void drawBand(List<Drawable> all, int sample, int first, Band band) {
        int rows = Math.min(BAND_ROWS, height - first);
        band.begin(first, rows);
        for (int i = 0; i < all.size(); i++) {
            band.draw(all.get(i), i, sample, false);
        }
        for (int row = 0; row < rows; row++) {
            int y = first + row;
            sharp.from[y] = band.from[row];
            sharp.to[y] = band.to[row];
            for (int x = band.from[row]; x <= band.to[row]; x++) {
                int i = row * width + x;
                int to = 4 * (y * width + x);
                if (band.inverseDepth[i] > 0) {
                    band.light(all, i, sharp.picture, to);
                    sharp.picture[to + 3] = 1;
                } else {
                    Arrays.fill(sharp.picture, to, to + 4, 0);
                }
            }
            blurAcross(y);
        }
    }

    private void blurAcross(int y) {
        boolean empty = sharp.from[y] > sharp.to[y];
        smeared.from[y] = empty ? width : Math.max(0, sharp.from[y] - across);
        smeared.to[y] = empty ? -1 : Math.min(width - 1, sharp.to[y] + across);
        if (empty) {
            return;
        }
        int row = y * width;
        Arrays.fill(smeared.picture, 4 * (row + smeared.from[y]), 4 * (row + smeared.to[y] + 1), 0);
        for (int k = -across; k <= across; k++) {
            int first = Math.max(smeared.from[y], sharp.from[y] - k);
            int last = Math.min(smeared.to[y], sharp.to[y] - k);
            add(sharp.picture, 4 * (row + first + k), smeared.picture, 4 * (row + first), 4 * (last - first + 1), 1);
        }
        float share = 1f / (2 * across + 1);
        for (int i = 4 * (row + smeared.from[y]); i < 4 * (row + smeared.to[y] + 1); i++) {
            smeared.picture[i] *= share;
        }
    }

    private void blurDown(int firstRow) {
        float share = 1f / (2 * down + 1);
        for (int y = firstRow; y < Math.min(height, firstRow + BAND_ROWS); y++) {
            int top = Math.max(0, y - down);
            int bottom = Math.min(height - 1, y + down);
            int from = width;
            int to = -1;
            for (int k = top; k <= bottom; k++) {
                from = Math.min(from, smeared.from[k]);
                to = Math.max(to, smeared.to[k]);
            }
            blurred.from[y] = from;
            blurred.to[y] = to;
            if (from > to) {
                continue;
            }
            Arrays.fill(blurred.picture, 4 * (y * width + from), 4 * (y * width + to + 1), 0);
            for (int k = top; k <= bottom; k++) {
                int start = smeared.from[k];
                int count = 4 * (smeared.to[k] - start + 1);
                add(smeared.picture, 4 * (k * width + start), blurred.picture, 4 * (y * width + start), count, share);
            }
        }
    }

    private static void add(float[] in, int first, float[] out, int start, int count, float share) {
        for (int i = 0; i < count; i++) {
            out[start + i] += share * in[first + i];
        }
    }
}
