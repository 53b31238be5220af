package floorgauge.events.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorCovariance;
import java.util.Random;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

class GaussianDiscTest {

    private static final long SEED = 11;

    @Test
    void noErrorIsAStep() {
        FloorCovariance none = new FloorCovariance(0, 0, 0);
        assertThat(GaussianDisc.within(0.3, 0.4, none, 0.6)).isCloseTo(1, within(1e-9));
        assertThat(GaussianDisc.within(0.3, 0.4, none, 0.4)).isCloseTo(0, within(1e-9));
    }

    /** Rayleigh distribution: P(length at most r) = 1 - exp(-r^2 / 2 s^2) for a round error around 0. */
    @Test
    void aRoundErrorAroundNothingIsRayleigh() {
        FloorCovariance round = FloorCovariance.isotropic(0.5);
        for (double r = 0.1; r < 3; r += 0.3) {
            assertThat(GaussianDisc.within(0, 0, round, r)).isCloseTo(1 - Math.exp(-r * r / 0.5), within(1e-5));
        }
    }

    @Test
    void aSkewedErrorAgreesWithDrawnSamples() {
        Random random = new Random(SEED);
        FloorCovariance c = new FloorCovariance(0.09, 0.03, 0.04);
        double root = Math.sqrt(0.09);
        int hits = 0;
        int draws = 400_000;
        for (int i = 0; i < draws; i++) {
            double a = random.nextGaussian();
            double b = random.nextGaussian();
            double x = 0.4 + root * a;
            double y = 0.2 + 0.03 / root * a + Math.sqrt(0.04 - 0.0009 / 0.09) * b;
            hits += Math.hypot(x, y) <= 0.5 ? 1 : 0;
        }
        assertThat(GaussianDisc.within(0.4, 0.2, c, 0.5))
                .as("seed " + SEED)
                .isCloseTo(hits / (double) draws, within(0.003));
    }

    /** Hipparchus 4.0.3, NormalDistribution, is the reference. */
    @Test
    void theNormalDistributionAgreesWithHipparchus() {
        NormalDistribution reference = new NormalDistribution();
        for (double z = -9; z <= 9; z += 0.037) {
            assertThat(Normal.cumulative(z)).isCloseTo(reference.cumulativeProbability(z), within(1e-13));
        }
    }
}
