package floorgauge.eval.fit;

import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.eval.statistics.PairedDifference;
import floorgauge.events.screen.QualityPart;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.List;

/**
 * Fits the weights of screen quality to a coach's grades: least mean squared error of the quality, in hundredths, against the
 * middle of the grade's band, plus a pull toward the base of {@code 0.02 sum (w - w0)^2} that lets go as soon as a few dozen
 * screens say otherwise. Weights stay at or above 0 and sum to 1. Found by moving weight between two parts in ever smaller
 * steps, which for a convex error ends at the least one. The gain is told by cross-validation by film.
 */
public final class WeightFit {

    private static final double PULL = 0.02;
    private static final double FIRST_STEP = 0.16;
    private static final double LAST_STEP = 0.0025;

    private final double[] base;

    private WeightFit(double[] base) {
        this.base = base;
    }

    /**
     * @param films the graded screens of each film
     * @throws TooFewLabelsException where there are too few grades, or on too few films
     */
    public static FitResult fit(List<List<GradedScreen>> films, Standards standards, ClipBootstrap bootstrap) {
        List<List<GradedScreen>> graded =
                films.stream().filter(f -> !f.isEmpty()).toList();
        TooFewLabelsException.require(graded.stream().mapToLong(List::size).sum(), "grades of screens", graded.size());
        double[] base = weights(standards);
        WeightFit fit = new WeightFit(base);
        List<ClipBootstrap.Pair<double[]>> heldOut = new ArrayList<>();
        for (int fold = 0; fold < Folds.count(graded.size()); fold++) {
            double[] without = fit.best(Folds.seen(graded, fold));
            for (List<GradedScreen> film : Folds.heldOut(graded, fold)) {
                heldOut.add(new ClipBootstrap.Pair<>(errors(film, base), errors(film, without)));
            }
        }
        PairedDifference gain = bootstrap.compare(heldOut, WeightFit::closeness);
        return new FitResult(
                standards,
                with(standards, fit.best(graded)),
                "100 less the mean error of screen quality",
                closeness(heldOut.stream().map(ClipBootstrap.Pair::first).toList()),
                closeness(heldOut.stream().map(ClipBootstrap.Pair::second).toList()),
                gain);
    }

    private static double[] weights(Standards standards) {
        double[] weights = new double[QualityPart.values().length];
        double total = 0;
        for (QualityPart part : QualityPart.values()) {
            weights[part.ordinal()] = standards.of(part.weight());
            total += weights[part.ordinal()];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] = total > 0 ? weights[i] / total : 1.0 / weights.length;
        }
        return weights;
    }

    private static Standards with(Standards standards, double[] weights) {
        Standards fitted = standards;
        for (QualityPart part : QualityPart.values()) {
            Setting setting = part.weight();
            double rounded = Math.round(weights[part.ordinal()] * 10_000) / 10_000.0;
            fitted = fitted.with(setting, Math.max(setting.least(), Math.min(setting.most(), rounded)));
        }
        return fitted;
    }

    private double[] best(List<List<GradedScreen>> films) {
        List<GradedScreen> screens = films.stream().flatMap(List::stream).toList();
        double[] weights = base.clone();
        double loss = loss(screens, weights);
        double step = FIRST_STEP;
        while (step >= LAST_STEP) {
            double improved = improve(screens, weights, loss, step);
            step = improved < loss ? step : step / 2;
            loss = improved;
        }
        return weights;
    }

    /** Tries every move of weight from one part to another and keeps those that help. */
    private double improve(List<GradedScreen> screens, double[] weights, double loss, double step) {
        double best = loss;
        for (int from = 0; from < weights.length; from++) {
            for (int to = 0; to < weights.length; to++) {
                double moved = Math.min(step, weights[from]);
                if (from != to && moved > 0) {
                    weights[from] -= moved;
                    weights[to] += moved;
                    double tried = loss(screens, weights);
                    if (tried < best - 1e-12) {
                        best = tried;
                    } else {
                        weights[from] += moved;
                        weights[to] -= moved;
                    }
                }
            }
        }
        return best;
    }

    private double loss(List<GradedScreen> screens, double[] weights) {
        double sum = 0;
        for (GradedScreen screen : screens) {
            double error = (screen.quality(weights) - screen.target()) / 100;
            sum += error * error;
        }
        double pull = 0;
        for (int i = 0; i < weights.length; i++) {
            pull += (weights[i] - base[i]) * (weights[i] - base[i]);
        }
        double loss = sum / screens.size() + PULL * pull;
        return Double.isNaN(loss) ? Double.POSITIVE_INFINITY : loss;
    }

    private static double[] errors(List<GradedScreen> film, double[] weights) {
        return film.stream()
                .mapToDouble(s -> Math.abs(s.quality(weights) - s.target()))
                .filter(e -> !Double.isNaN(e))
                .toArray();
    }

    private static double closeness(List<double[]> films) {
        return 100
                - films.stream()
                        .flatMapToDouble(java.util.Arrays::stream)
                        .average()
                        .orElse(Double.NaN);
    }
}
