package floorgauge.sampleclips.render.picture;

import java.util.Arrays;
import java.util.List;

/**
 * A strip of rows into which triangles are drawn with a depth buffer, one sample at a time. Which triangle is seen at a pixel,
 * and where in it, is kept while drawing; the light of what is seen is found at the end. Used by one thread at once.
 */
final class Band {

    private static final int TRIANGLE_BITS = 18;

    final int width;
    final int height;
    int firstRow;
    int rows;
    /** 1 / depth of what is nearest, 0 where nothing is. */
    final float[] inverseDepth;

    /** Where something is: its place among all that is drawn, and the triangle. */
    private final int[] seen;
    /** Shares of the triangle's second and third corner. */
    private final float[] second;

    private final float[] third;

    /** First and last touched column of each row. */
    final int[] from;

    final int[] to;
    private final int[] stamp;
    private int covered;

    Band(int width, int height) {
        this.width = width;
        this.height = height;
        inverseDepth = new float[width * height];
        seen = new int[width * height];
        second = new float[width * height];
        third = new float[width * height];
        stamp = new int[width * height];
        from = new int[height];
        to = new int[height];
        Arrays.fill(from, 0);
        Arrays.fill(to, width - 1);
    }

    void begin(int firstRow, int rows) {
        clear();
        this.firstRow = firstRow;
        this.rows = rows;
    }

    /** Forgets which pixels were counted. */
    void beginCounting() {
        Arrays.fill(stamp, -1);
    }

    /** Forgets what the last sample drew. */
    void clear() {
        for (int r = 0; r < height; r++) {
            if (from[r] <= to[r]) {
                Arrays.fill(inverseDepth, r * width + from[r], r * width + to[r] + 1, 0);
            }
            from[r] = width;
            to[r] = -1;
        }
    }

    /**
     * Draws a mesh.
     *
     * @param place among all that is drawn
     * @param count whether to count the pixels that it covers, whatever stands before it
     * @return pixels covered, 0 where not counted
     */
    int draw(Drawable d, int place, int sample, boolean count) {
        float first = firstRow;
        float last = firstRow + rows - 1;
        if (d.bottom[sample] < first || d.top[sample] > last) {
            return 0;
        }
        covered = 0;
        float[] s = d.screen[sample];
        float[] tops = d.chunkTop[sample];
        float[] bottoms = d.chunkBottom[sample];
        int[] triangles = d.mesh.triangles();
        for (int chunk = 0; chunk < tops.length; chunk++) {
            if (bottoms[chunk] < first || tops[chunk] > last) {
                continue;
            }
            int end = Math.min(triangles.length, 3 * Drawable.CHUNK * (chunk + 1));
            for (int t = 3 * Drawable.CHUNK * chunk; t < end; t += 3) {
                int a = 3 * triangles[t];
                int b = 3 * triangles[t + 1];
                int c = 3 * triangles[t + 2];
                if (s[a + 2] != 0 && s[b + 2] != 0 && s[c + 2] != 0) {
                    fill(s, a, b, c, place << TRIANGLE_BITS | t / 3, count ? place : -1);
                }
            }
        }
        return covered;
    }

    private void fill(float[] s, int a, int b, int c, int what, int mark) {
        float ax = s[a];
        float ay = s[a + 1];
        float bx = s[b];
        float by = s[b + 1];
        float cx = s[c];
        float cy = s[c + 1];
        int top = Math.max(firstRow, ceil(least(ay, by, cy)));
        int bottom = Math.min(firstRow + rows - 1, floor(most(ay, by, cy)));
        int left = Math.max(0, ceil(least(ax, bx, cx)));
        int right = Math.min(width - 1, floor(most(ax, bx, cx)));
        if (top > bottom || left > right) {
            return;
        }
        float area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
        if (Math.abs(area) < 1e-7f) {
            return;
        }
        float inverse = 1 / area;
        float stepB = (cy - ay) * inverse;
        float stepC = -(by - ay) * inverse;
        float da = s[a + 2];
        float db = s[b + 2];
        float dc = s[c + 2];
        for (int y = top; y <= bottom; y++) {
            float dy = y - ay;
            float wb = ((left - ax) * (cy - ay) - (cx - ax) * dy) * inverse;
            float wc = ((bx - ax) * dy - (left - ax) * (by - ay)) * inverse;
            int row = y - firstRow;
            int i = row * width + left;
            for (int x = left; x <= right; x++, i++, wb += stepB, wc += stepC) {
                float wa = 1 - wb - wc;
                if (wa < -1e-6f || wb < -1e-6f || wc < -1e-6f) {
                    continue;
                }
                if (mark >= 0 && stamp[i] != mark) {
                    stamp[i] = mark;
                    covered++;
                }
                float near = wa * da + wb * db + wc * dc;
                if (near > inverseDepth[i]) {
                    inverseDepth[i] = near;
                    seen[i] = what;
                    second[i] = wb;
                    third[i] = wc;
                    from[row] = Math.min(from[row], x);
                    to[row] = Math.max(to[row], x);
                }
            }
        }
    }

    private static float least(float a, float b, float c) {
        float least = a < b ? a : b;
        return least < c ? least : c;
    }

    private static float most(float a, float b, float c) {
        float most = a > b ? a : b;
        return most > c ? most : c;
    }

    private static int ceil(float v) {
        int whole = (int) v;
        return whole < v ? whole + 1 : whole;
    }

    private static int floor(float v) {
        int whole = (int) v;
        return whole > v ? whole - 1 : whole;
    }

    /** Place of what is seen at a pixel of the band at which something is. */
    int place(int pixel) {
        return seen[pixel] >>> TRIANGLE_BITS;
    }

    /**
     * The light of what is seen at a pixel of the band at which something is.
     *
     * @param all what was drawn, by place
     * @param rgb receives red, green, blue
     * @param at index of red
     */
    void light(List<Drawable> all, int pixel, float[] rgb, int at) {
        Drawable d = all.get(place(pixel));
        int triangle = seen[pixel] & (1 << TRIANGLE_BITS) - 1;
        int[] corners = d.mesh.triangles();
        int a = 3 * corners[3 * triangle];
        int b = 3 * corners[3 * triangle + 1];
        int c = 3 * corners[3 * triangle + 2];
        float wb = second[pixel];
        float wc = third[pixel];
        float wa = 1 - wb - wc;
        float[] l = d.light;
        rgb[at] = wa * l[a] + wb * l[b] + wc * l[c];
        rgb[at + 1] = wa * l[a + 1] + wb * l[b + 1] + wc * l[c + 1];
        rgb[at + 2] = wa * l[a + 2] + wb * l[b + 2] + wc * l[c + 2];
        byte number = d.mesh.marks()[triangle];
        if (number == 0 || d.number == null) {
            return;
        }
        float[] t = d.mesh.texture();
        int ta = a / 3 * 2;
        int tb = b / 3 * 2;
        int tc = c / 3 * 2;
        double right = wa * t[ta] + wb * t[tb] + wc * t[tc];
        double up = wa * t[ta + 1] + wb * t[tb + 1] + wc * t[tc + 1];
        if (d.number.covers(right, up, number)) {
            float[] r = d.mesh.reflectance();
            for (int k = 0; k < 3; k++) {
                float cloth = Math.max(0.02f, r[a + k]);
                rgb[at + k] *= d.number.colour[k] / cloth;
            }
        }
    }
}
