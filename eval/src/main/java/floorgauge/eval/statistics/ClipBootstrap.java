package floorgauge.eval.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * Intervals by resampling whole clips with replacement: moments of one clip share its camera, light and players, so they are
 * not independent, while clips nearly are. Percentile interval (Efron and Tibshirani, 1993, "An introduction to the
 * bootstrap", chapter 13). Resamples on which the statistic is not defined are left out of the interval.
 *
 * @param resamples how many, at least 1
 * @param confidence of the interval, between 0 and 1
 * @param seed of the generator; the same seed and clips give the same interval
 */
public record ClipBootstrap(int resamples, double confidence, long seed) {

    /** Fewer clips than this vary too little under resampling to say anything. */
    private static final int FEWEST_CLIPS = 2;

    private static final int USUAL_RESAMPLES = 2000;
    private static final long USUAL_SEED = 1;

    public ClipBootstrap {
        if (resamples < 1) {
            throw new IllegalArgumentException("at least one resample: " + resamples);
        }
        Interval.requireConfidence(confidence);
    }

    /** 2000 resamples, 90 %, a fixed seed. */
    public static ClipBootstrap usual() {
        return new ClipBootstrap(USUAL_RESAMPLES, Interval.USUAL_CONFIDENCE, USUAL_SEED);
    }

    /** The statistic of all clips with its interval; the interval is unknown below two clips. */
    public <C> Estimate estimate(List<C> clips, ToDoubleFunction<List<C>> statistic) {
        double value = clips.isEmpty() ? Double.NaN : statistic.applyAsDouble(clips);
        return new Estimate(value, interval(draw(clips, statistic)), clips.size());
    }

    /**
     * Two runs over the same clips: the difference of the statistic, second less first, with the interval of resampling both
     * runs together clip by clip. What makes a clip hard for both falls out of the difference.
     */
    public <C> PairedDifference compare(List<Pair<C>> clips, ToDoubleFunction<List<C>> statistic) {
        ToDoubleFunction<List<Pair<C>>> difference = pairs -> statistic.applyAsDouble(
                        pairs.stream().map(Pair::second).toList())
                - statistic.applyAsDouble(pairs.stream().map(Pair::first).toList());
        return new PairedDifference(
                clips.isEmpty() ? Double.NaN : difference.applyAsDouble(clips),
                interval(draw(clips, difference)),
                clips.size());
    }

    /**
     * The same clip in two runs.
     *
     * @param first in the first run
     * @param second in the second run
     */
    public record Pair<C>(C first, C second) {}

    private <C> double[] draw(List<C> clips, ToDoubleFunction<List<C>> statistic) {
        if (clips.size() < FEWEST_CLIPS) {
            return new double[0];
        }
        SplittableRandom random = new SplittableRandom(seed);
        double[] values = new double[resamples];
        for (int i = 0; i < resamples; i++) {
            values[i] = statistic.applyAsDouble(resample(clips, random));
        }
        return Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
    }

    private static <C> List<C> resample(List<C> clips, SplittableRandom random) {
        List<C> drawn = new ArrayList<>(clips.size());
        for (int i = 0; i < clips.size(); i++) {
            drawn.add(clips.get(random.nextInt(clips.size())));
        }
        return drawn;
    }

    private Interval interval(double[] sorted) {
        if (sorted.length == 0) {
            return Interval.unknown(confidence);
        }
        double tail = (1 - confidence) / 2;
        return new Interval(Quantiles.ofSorted(sorted, tail), Quantiles.ofSorted(sorted, 1 - tail), confidence);
    }
}
