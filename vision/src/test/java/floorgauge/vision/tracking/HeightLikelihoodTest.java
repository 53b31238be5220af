package floorgauge.vision.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorPoint;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class HeightLikelihoodTest {

    @Test
    void whatIsNotKnownSaysNothing() {
        assertThat(new HeightLikelihood(0.1).logRatio(OptionalDouble.empty(), OptionalDouble.of(1.9)))
                .isZero();
    }

    @Test
    void isTheRatioOfTwoNormalDensities() {
        // spread 0.1 and statures of 0.09: variances 0.01 and 0.0262.
        double same = Math.exp(-0.15 * 0.15 / (2 * 0.01)) / 0.1;
        double different = Math.exp(-0.15 * 0.15 / (2 * 0.0262)) / Math.sqrt(0.0262);
        assertThat(new HeightLikelihood(0.1).logRatio(OptionalDouble.of(1.80), OptionalDouble.of(1.95)))
                .isCloseTo(Math.log(same / different), within(1e-9));
    }

    @Test
    void steadyHeightsTeachASmallerSpread() {
        Tracklet steady = TestSightings.walk(0, 60, t -> new FloorPoint(5, 0), t -> TestSightings.WHITE, t -> 1.9);
        assertThat(HeightLikelihood.learn(List.of(steady)).spreadMetres())
                .isLessThan(HeightLikelihood.learn(List.of()).spreadMetres());
    }
}
