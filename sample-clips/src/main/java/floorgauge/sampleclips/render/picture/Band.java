package floorgauge.sampleclips.render.picture;

import java.util.Arrays;

/**
 * A strip of rows into which triangles are drawn with a depth buffer, one sample at a time. Used by one thread at once.
 */
final class Band {

    final int width;
    final int height;
    int firstRow;
    int rows;
    /** 1 / depth of what is nearest, 0 where nothing is. */
    final float[] inverseDepth;

    final float[] light;
    final int[] owner;
    /** First and last touched column of each row. */
    final int[] from;

    final int[] to;
    private final int[] stamp;
    private int covered;

    Band(int width, int height) {
        this.width = width;
        this.height = height;
        inverseDepth = new float[width * height];
        light = new float[3 * width * height];
        owner = new int[width * height];
        stamp = new int[width * height];
        from = new int[height];
        to = new int[height];
    }

    void begin(int firstRow, int rows) {
        this.firstRow = firstRow;
        this.rows = rows;
        Arrays.fill(stamp, -1);
        Arrays.fill(from, 0);
        Arrays.fill(to, width - 1);
        clear();
    }

    /** Forgets what the last sample drew. */
    void clear() {
        for (int r = 0; r < rows; r++) {
            if (from[r] <= to[r]) {
                Arrays.fill(inverseDepth, r * width + from[r], r * width + to[r] + 1, 0);
                Arrays.fill(owner, r * width + from[r], r * width + to[r] + 1, 0);
            }
            from[r] = width;
            to[r] = -1;
        }
    }

    /**
     * Draws a mesh.
     *
     * @param count whether to count the pixels that it covers, whatever stands before it
     * @param mark unlike that of any other mesh counted in this band
     * @return pixels covered, 0 where not counted
     */
    int draw(Drawable d, int sample, boolean count, int mark) {
        if (d.bottom[sample] < firstRow || d.top[sample] > firstRow + rows - 1) {
            return 0;
        }
        covered = 0;
        float[] s = d.screen[sample];
        int[] triangles = d.mesh.triangles();
        for (int t = 0; t < triangles.length; t += 3) {
            int a = 3 * triangles[t];
            int b = 3 * triangles[t + 1];
            int c = 3 * triangles[t + 2];
            float low = Math.min(s[a + 1], Math.min(s[b + 1], s[c + 1]));
            float high = Math.max(s[a + 1], Math.max(s[b + 1], s[c + 1]));
            if (high < firstRow || low > firstRow + rows - 1 || s[a + 2] == 0 || s[b + 2] == 0 || s[c + 2] == 0) {
                continue;
            }
            fill(d, s, a, b, c, low, high, d.mesh.marks()[t / 3], count ? mark : -1);
        }
        return covered;
    }

    private void fill(Drawable d, float[] s, int a, int b, int c, float low, float high, byte number, int mark) {
        float area = (s[b] - s[a]) * (s[c + 1] - s[a + 1]) - (s[c] - s[a]) * (s[b + 1] - s[a + 1]);
        if (Math.abs(area) < 1e-7f) {
            return;
        }
        float inverse = 1 / area;
        int left = Math.max(0, (int) Math.ceil(Math.min(s[a], Math.min(s[b], s[c]))));
        int right = Math.min(width - 1, (int) Math.floor(Math.max(s[a], Math.max(s[b], s[c]))));
        int top = Math.max(firstRow, (int) Math.ceil(low));
        int bottom = Math.min(firstRow + rows - 1, (int) Math.floor(high));
        float stepB = (s[c + 1] - s[a + 1]) * inverse;
        float stepC = -(s[b + 1] - s[a + 1]) * inverse;
        for (int y = top; y <= bottom; y++) {
            float dy = y - s[a + 1];
            float wb = ((left - s[a]) * (s[c + 1] - s[a + 1]) - (s[c] - s[a]) * dy) * inverse;
            float wc = ((s[b] - s[a]) * dy - (left - s[a]) * (s[b + 1] - s[a + 1])) * inverse;
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
                float near = wa * s[a + 2] + wb * s[b + 2] + wc * s[c + 2];
                if (near > inverseDepth[i]) {
                    inverseDepth[i] = near;
                    owner[i] = d.owner;
                    colour(d, a, b, c, wa, wb, wc, number, 3 * i);
                    from[row] = Math.min(from[row], x);
                    to[row] = Math.max(to[row], x);
                }
            }
        }
    }

    private void colour(Drawable d, int a, int b, int c, float wa, float wb, float wc, byte number, int at) {
        float[] l = d.light;
        for (int k = 0; k < 3; k++) {
            light[at + k] = wa * l[a + k] + wb * l[b + k] + wc * l[c + k];
        }
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
                light[at + k] *= d.number.colour[k] / cloth;
            }
        }
    }
}
