package floorgauge.court.lines;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.imgproc.Imgproc;

/**
 * Finds the middles of stripes of any colour, bright or dark, on any floor: in each channel of CIE Lab and at several
 * scales, the points where the picture's second derivative across is large, along is small, and the first derivative
 * across is zero.
 *
 * <p>Source: Steger, An unbiased detector of curvilinear structures (PAMI 20, 1998), section 2; scales normalised as in
 * Lindeberg, Edge detection and ridge detection with automatic scale selection (IJCV 30, 1998).
 */
public final class RidgeFinder {

    /** Standard deviations of the smoothing; a stripe of width w answers most at w over the square root of 12. */
    private static final double[] SCALES = {1.0, 1.8, 3.2};

    /** A stripe bends less along than across. */
    private static final double LARGEST_ANISOTROPY = 0.6;

    /** A point belongs to the pixel in which its zero crossing lies. */
    private static final double PIXEL_REACH = 0.6;

    /** A stripe stands out from the noise by this factor over the median response of its scale and channel. */
    private static final double NOISE_FACTOR = 3.0;

    /** Least noise in CIE Lab units: a difference of about 2 is just seen by a person (common practice). */
    private static final double LEAST_NOISE = 0.4;

    /** How far beside a stripe its lobes can lie, in pixels: four of the widest scale. */
    private static final int LOBE_REACH = 14;

    /** A push by more than this share of the scale comes from no shade. */
    private static final double MOST_SHADE = 0.3;

    private final int width;
    private final int height;
    private final float[][] smooth = new float[3][];
    private final float[] best;
    private final float[] bestScale;
    private final float[] normalX;
    private final float[] normalY;
    private final float[] offset;

    private RidgeFinder(int width, int height) {
        this.width = width;
        this.height = height;
        this.best = new float[width * height];
        this.bestScale = new float[width * height];
        this.normalX = new float[width * height];
        this.normalY = new float[width * height];
        this.offset = new float[width * height];
    }

    /**
     * @param bgr 8 bits, BGR; left unchanged
     * @return ridge points in order of row, then column
     */
    public static List<RidgePoint> find(Mat bgr) {
        RidgeFinder finder = new RidgeFinder(bgr.cols(), bgr.rows());
        Mat lab = new Mat();
        List<Mat> channels = new ArrayList<>();
        try {
            bgr.convertTo(lab, CvType.CV_32FC3, 1 / 255.0);
            Imgproc.cvtColor(lab, lab, Imgproc.COLOR_BGR2Lab);
            Core.split(lab, channels);
            for (int channel = 0; channel < 3; channel++) {
                finder.smooth[channel] = floats(channels.get(channel), 0, 0, 0.8, 0.8);
            }
            for (double scale : SCALES) {
                finder.respond(channels, scale);
            }
        } finally {
            lab.release();
            channels.forEach(Mat::release);
        }
        return finder.points();
    }

    private void respond(List<Mat> channels, double scale) {
        List<Responses> own = channels.parallelStream()
                .map(channel -> responses(channel, scale))
                .toList();
        Responses strongest = new Responses(width * height);
        double[] noise = own.stream()
                .mapToDouble(r -> Math.max(LEAST_NOISE, median(r.response)))
                .toArray();
        IntStream.range(0, height).parallel().forEach(row -> {
            for (int c = 0; c < noise.length; c++) {
                strongest.keepStronger(own.get(c), (byte) c, noise[c], row * width, (row + 1) * width);
            }
            keepBest(strongest, scale, row * width, (row + 1) * width);
        });
    }

    private Responses responses(Mat channel, double scale) {
        float[] ix = floats(channel, 1, 0, scale, scale);
        float[] iy = floats(channel, 0, 1, scale, scale);
        float[] ixx = floats(channel, 2, 0, scale, scale);
        float[] ixy = floats(channel, 1, 1, scale, scale);
        float[] iyy = floats(channel, 0, 2, scale, scale);
        Responses own = new Responses(width * height);
        for (int p = 0; p < own.response.length; p++) {
            own.set(p, ix[p], iy[p], ixx[p], ixy[p], iyy[p], scale * scale);
        }
        return own;
    }

    private void keepBest(Responses strongest, double scale, int from, int to) {
        for (int p = from; p < to; p++) {
            float response = strongest.response[p];
            if (response > NOISE_FACTOR && response > best[p] && Math.abs(strongest.t[p]) < PIXEL_REACH) {
                double t = strongest.t[p] + shade(p, strongest, scale);
                if (Math.abs(t) < PIXEL_REACH) {
                    best[p] = response;
                    bestScale[p] = (float) scale;
                    normalX[p] = strongest.nx[p];
                    normalY[p] = strongest.ny[p];
                    offset[p] = (float) t;
                }
            }
        }
    }

    /**
     * How far the floor's shade pushed the zero crossing off a stripe's middle: a slope g under a stripe of second
     * derivative c moves it by -g / c, most for faint stripes and wide scales. The slope is told by both sides of the stripe
     * at two distances; where the two disagree, something else lies there, and the smaller one counts.
     */
    private double shade(int p, Responses of, double scale) {
        double near = slope(p, of, 2.2 * scale + 1);
        double far = slope(p, of, 3.2 * scale + 2);
        double slope = near * far <= 0 ? 0 : Math.abs(near) < Math.abs(far) ? near : far;
        return Math.max(-MOST_SHADE * scale, Math.min(MOST_SHADE * scale, slope / of.large[p]));
    }

    private double slope(int p, Responses of, double away) {
        float[] values = smooth[of.channel[p]];
        double x = p % width;
        double y = p / width;
        return (sample(values, x + away * of.nx[p], y + away * of.ny[p])
                        - sample(values, x - away * of.nx[p], y - away * of.ny[p]))
                / (2 * away);
    }

    /** Every pixel's response, normal and offset across. */
    private static final class Responses {
        private final float[] response;
        private final float[] nx;
        private final float[] ny;
        private final float[] t;
        private final float[] large;
        private final byte[] channel;

        Responses(int size) {
            response = new float[size];
            nx = new float[size];
            ny = new float[size];
            t = new float[size];
            large = new float[size];
            channel = new byte[size];
        }

        /** From the derivatives of one channel. */
        void set(int p, float ix, float iy, float ixx, float ixy, float iyy, double squaredScale) {
            response[p] = 0;
            double mean = (ixx + iyy) / 2.0;
            double half = (ixx - iyy) / 2.0;
            double root = Math.sqrt(half * half + ixy * ixy);
            double large = mean >= 0 ? mean + root : mean - root;
            this.large[p] = (float) large;
            double small = mean >= 0 ? mean - root : mean + root;
            if (Math.abs(small) > LARGEST_ANISOTROPY * Math.abs(large)) {
                return;
            }
            double vx = ixy;
            double vy = large - ixx;
            if (Math.abs(large - iyy) > Math.abs(vy)) {
                vx = large - iyy;
                vy = ixy;
            }
            double length = Math.hypot(vx, vy);
            if (length > 0) {
                response[p] = (float) (squaredScale * Math.abs(large));
                nx[p] = (float) (vx / length);
                ny[p] = (float) (vy / length);
                t[p] = (float) (-(ix * vx + iy * vy) / length / large);
            }
        }

        /** Takes over, over its noise, what answers more in another channel. */
        void keepStronger(Responses other, byte of, double noise, int from, int to) {
            for (int p = from; p < to; p++) {
                float relative = (float) (other.response[p] / noise);
                if (relative > response[p]) {
                    response[p] = relative;
                    nx[p] = other.nx[p];
                    ny[p] = other.ny[p];
                    t[p] = other.t[p];
                    large[p] = other.large[p];
                    channel[p] = of;
                }
            }
        }
    }

    /** Derivative of a Gaussian of the given orders, as plain floats. */
    private static float[] floats(Mat channel, int orderX, int orderY, double scaleX, double scaleY) {
        Mat result = new Mat();
        Mat kernelX = kernel(orderX, scaleX);
        Mat kernelY = kernel(orderY, scaleY);
        try {
            Imgproc.sepFilter2D(
                    channel,
                    result,
                    CvType.CV_32F,
                    kernelX,
                    kernelY,
                    new org.opencv.core.Point(-1, -1),
                    0,
                    Core.BORDER_REPLICATE);
            float[] values = new float[channel.rows() * channel.cols()];
            result.get(0, 0, values);
            return values;
        } finally {
            result.release();
            kernelX.release();
            kernelY.release();
        }
    }

    /** Sampled derivative of a Gaussian, for correlation: {@code f'(x) = sum over u of f(x + u) k(u)}. */
    private static Mat kernel(int order, double scale) {
        int reach = (int) Math.ceil(4 * scale);
        double[] gaussian = new double[2 * reach + 1];
        double sum = 0;
        for (int i = -reach; i <= reach; i++) {
            gaussian[i + reach] = Math.exp(-i * i / (2 * scale * scale));
            sum += gaussian[i + reach];
        }
        double[] values = new double[2 * reach + 1];
        double mean = 0;
        for (int i = -reach; i <= reach; i++) {
            double g = gaussian[i + reach] / sum;
            double s2 = scale * scale;
            values[i + reach] = order == 0 ? g : order == 1 ? g * i / s2 : g * (i * i / s2 - 1) / s2;
            mean += values[i + reach] / values.length;
        }
        if (order == 2) {
            // A flat picture must answer with nothing.
            for (int i = 0; i < values.length; i++) {
                values[i] -= mean;
            }
        }
        Mat kernel = new Mat(1, values.length, CvType.CV_64F);
        kernel.put(0, 0, values);
        return kernel;
    }

    /** The median of a sample of the values. */
    private static double median(float[] values) {
        int step = Math.max(1, values.length / 20_000);
        float[] sample = new float[(values.length + step - 1) / step];
        for (int i = 0; i < sample.length; i++) {
            sample[i] = values[i * step];
        }
        java.util.Arrays.sort(sample);
        return sample[sample.length / 2];
    }

    private List<RidgePoint> points() {
        RidgePoint[] all = new RidgePoint[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int p = y * width + x;
                if (best[p] > 0) {
                    all[p] = point(x, y, p);
                }
            }
        }
        List<RidgePoint> points = new ArrayList<>();
        for (int p = 0; p < all.length; p++) {
            if (all[p] != null && !besideStronger(all, p)) {
                points.add(all[p]);
            }
        }
        return points;
    }

    /**
     * Whether a stripe of the opposite contrast, more than twice as strong, runs beside this point: then this is the lobe
     * of a second derivative, at most 2 exp(-3/2) = 0.45 of the middle's, and no stripe of its own.
     */
    private boolean besideStronger(RidgePoint[] all, int p) {
        RidgePoint own = all[p];
        int column = p % width;
        int row = p / width;
        for (int step = -LOBE_REACH; step <= LOBE_REACH; step++) {
            int x = (int) Math.round(column + step * own.normalX());
            int y = (int) Math.round(row + step * own.normalY());
            if (step == 0 || x < 0 || y < 0 || x >= width || y >= height) {
                continue;
            }
            RidgePoint other = all[y * width + x];
            if (other != null
                    && other.strength() > 2 * own.strength()
                    && Math.abs(step) <= 4 * bestScale[y * width + x] + 1
                    && Math.abs(own.normalX() * other.normalX() + own.normalY() * other.normalY()) > 0.9
                    && own.contrastCosine(other.contrastL(), other.contrastA(), other.contrastB()) < -0.3) {
                return true;
            }
        }
        return false;
    }

    private RidgePoint point(int x, int y, int p) {
        double px = x + offset[p] * normalX[p];
        double py = y + offset[p] * normalY[p];
        double away = 2.2 * bestScale[p] + 1;
        double[] contrast = new double[3];
        for (int channel = 0; channel < 3; channel++) {
            double here = sample(smooth[channel], px, py);
            double beside = (sample(smooth[channel], px + away * normalX[p], py + away * normalY[p])
                            + sample(smooth[channel], px - away * normalX[p], py - away * normalY[p]))
                    / 2;
            contrast[channel] = here - beside;
        }
        return new RidgePoint(px, py, normalX[p], normalY[p], best[p], contrast[0], contrast[1], contrast[2]);
    }

    private float sample(float[] values, double x, double y) {
        int column = (int) Math.max(0, Math.min(width - 1, Math.round(x)));
        int row = (int) Math.max(0, Math.min(height - 1, Math.round(y)));
        return values[row * width + column];
    }
}
