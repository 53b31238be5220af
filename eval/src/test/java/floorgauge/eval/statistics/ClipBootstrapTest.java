package floorgauge.eval.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.eval.statistics.ClipBootstrap.Pair;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class ClipBootstrapTest {

    private static final ToDoubleFunction<List<Double>> MEAN =
            values -> values.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);

    @Test
    void noClipsAndOneClipHaveNoInterval() {
        Estimate none = ClipBootstrap.usual().estimate(List.of(), MEAN);
        assertThat(none.value()).isNaN();
        assertThat(none.interval().known()).isFalse();
        assertThat(none.clips()).isZero();
        Estimate one = ClipBootstrap.usual().estimate(List.of(4.0), MEAN);
        assertThat(one.value()).isEqualTo(4);
        assertThat(one.interval().known()).isFalse();
        assertThat(ClipBootstrap.usual().compare(List.<Pair<Double>>of(), MEAN).difference())
                .isNaN();
    }

    @Test
    void clipsThatAreAllAlikeHaveAnIntervalOfNoWidth() {
        Estimate same = ClipBootstrap.usual().estimate(List.of(2.0, 2.0, 2.0), MEAN);
        assertThat(same.interval()).isEqualTo(new Interval(2, 2, 0.9));
    }

    @Test
    void resamplesOnWhichNothingIsDefinedAreLeftOut() {
        // Only resamples that hold the second clip define the ratio.
        ToDoubleFunction<List<Double>> ratio =
                v -> Ratios.of(v.stream().mapToDouble(d -> d).sum(), v.contains(3.0) ? 1 : 0);
        Estimate estimate = ClipBootstrap.usual().estimate(List.of(0.0, 3.0), ratio);
        assertThat(estimate.interval()).isEqualTo(new Interval(3, 6, 0.9));
    }

    @Test
    void sameSeedSameInterval() {
        List<Double> clips = List.of(1.0, 5.0, 2.0, 8.0);
        assertThat(new ClipBootstrap(200, 0.9, 5).estimate(clips, MEAN))
                .isEqualTo(new ClipBootstrap(200, 0.9, 5).estimate(clips, MEAN));
    }

    /**
     * The bootstrap variance of a mean is the plug-in variance over n (Efron and Tibshirani, 1993, equation 5.6), so for
     * many clips the 90 % interval spans about 1.645 of its square root to either side.
     */
    @Test
    void intervalOfAMeanHasTheKnownWidth() {
        long seed = 3;
        Random random = new Random(seed);
        List<Double> clips = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            clips.add(random.nextGaussian());
        }
        double mean = MEAN.applyAsDouble(clips);
        double variance =
                clips.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum() / 200;
        double half = 1.645 * Math.sqrt(variance / 200);
        Interval interval = ClipBootstrap.usual().estimate(clips, MEAN).interval();
        assertThat(interval.low()).as("seed %d", seed).isCloseTo(mean - half, Offset.offset(0.12 * half));
        assertThat(interval.high()).as("seed %d", seed).isCloseTo(mean + half, Offset.offset(0.12 * half));
    }

    @Test
    void pairingTakesOutWhatIsHardForBoth() {
        List<Pair<Double>> clips = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            clips.add(new Pair<>(i * 10.0, i * 10.0 + 1 + 0.1 * (i % 3)));
        }
        PairedDifference difference = ClipBootstrap.usual().compare(clips, MEAN);
        assertThat(difference.difference()).isCloseTo(1.1, Offset.offset(1e-9));
        assertThat(difference.beyondNoise()).isTrue();
        assertThat(difference.interval().low()).isGreaterThan(1);
        assertThat(difference.clips()).isEqualTo(12);
    }

    @Test
    void noiseIsNotCalledADifference() {
        List<Pair<Double>> clips = List.of(new Pair<>(1.0, 2.0), new Pair<>(2.0, 1.0), new Pair<>(3.0, 3.1));
        assertThat(ClipBootstrap.usual().compare(clips, MEAN).beyondNoise()).isFalse();
    }

    @Test
    void refusesNoResamples() {
        assertThatThrownBy(() -> new ClipBootstrap(0, 0.9, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ClipBootstrap(1, 1.2, 1)).isInstanceOf(IllegalArgumentException.class);
    }
}
