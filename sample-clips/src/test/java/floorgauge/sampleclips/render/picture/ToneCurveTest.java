package floorgauge.sampleclips.render.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ToneCurveTest {

    private final ToneCurve curve = new ToneCurve();

    private int at(double light) {
        return curve.at(light) & 255;
    }

    @Test
    void noLightIsBlackAndMuchIsWhite() {
        assertThat(at(0)).isZero();
        assertThat(at(-0.0)).isZero();
        assertThat(at(-1)).isZero();
        assertThat(at(Double.NEGATIVE_INFINITY)).isZero();
        assertThat(at(Double.MIN_VALUE)).isZero();
        assertThat(at(4)).isEqualTo(255);
        assertThat(at(1e9)).isEqualTo(255);
        assertThat(at(Double.POSITIVE_INFINITY)).isEqualTo(255);
    }

    @Test
    void neverFallsAsTheLightRises() {
        int before = 0;
        for (double light = 1e-6; light < 5; light *= 1.0001) {
            assertThat(at(light)).isBetween(before, before + 1);
            before = at(light);
        }
        assertThat(before).isEqualTo(255);
    }

    /** Below the shoulder, the sRGB transfer function (IEC 61966-2-1, from memory): 12.92 l, or 1.055 l^(1 / 2.4) - 0.055. */
    @Test
    void followsTheStandardBelowItsShoulder() {
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 5000; i++) {
            double light = 0.54 * random.nextDouble() * random.nextDouble();
            double standard = light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
            assertThat((double) at(light)).as("light %s", light).isCloseTo(255 * standard, within(0.6));
        }
    }
}
