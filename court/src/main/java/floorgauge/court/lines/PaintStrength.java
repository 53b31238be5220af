package floorgauge.court.lines;

import java.util.List;

/**
 * Tells paint from the grain of the wood by strength: the split of the logarithms of strength into two classes with the
 * least variance within, each point weighed by its squared strength, because grain has many points and paint strong ones.
 *
 * <p>Source of the split: Otsu, A threshold selection method from gray-level histograms (IEEE SMC 9, 1979).
 */
public final class PaintStrength {

    private static final int BINS = 128;
    private static final double LARGEST_LOG = 7;

    private PaintStrength() {}

    /**
     * The points that are strong enough to be paint.
     *
     * @param share of the split that is still enough: far, thin lines are weaker than the bulk of the paint
     */
    public static List<RidgePoint> paintOf(List<RidgePoint> points, double share) {
        double least = share * split(points);
        return points.stream().filter(p -> p.strength() >= least).toList();
    }

    private static double split(List<RidgePoint> points) {
        double[] weight = new double[BINS];
        for (RidgePoint p : points) {
            int bin = (int) Math.max(0, Math.min(BINS - 1, Math.log(p.strength()) / LARGEST_LOG * BINS));
            weight[bin] += p.strength() * p.strength();
        }
        double all = 0;
        double moment = 0;
        for (int bin = 0; bin < BINS; bin++) {
            all += weight[bin];
            moment += bin * weight[bin];
        }
        double below = 0;
        double belowMoment = 0;
        double best = -1;
        int split = 0;
        for (int bin = 0; bin < BINS - 1; bin++) {
            below += weight[bin];
            belowMoment += bin * weight[bin];
            double between = below > 0 && below < all
                    ? Math.pow(moment * below - belowMoment * all, 2) / (below * (all - below))
                    : -1;
            if (between > best) {
                best = between;
                split = bin + 1;
            }
        }
        return Math.exp(LARGEST_LOG * split / BINS);
    }
}
