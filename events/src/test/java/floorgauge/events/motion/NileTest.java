package floorgauge.events.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * The local level model on the yearly flow of the Nile at Aswan, 1871 to 1970, with variances 15099 and 1469.1. Figures:
 * Durbin and Koopman, Time Series Analysis by State Space Methods, chapter 2 (from memory), whose prior is mean 0 and
 * variance 1e7.
 */
class NileTest {

    private static final double[] FLOW = {
        1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958, 1140,
        1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020, 1050, 969,
        831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040, 759, 781, 865,
        845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050,
        918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740
    };

    private static final double NOISE = 15099;

    private static FixedIntervalSmoother filtered() {
        IntegratedWiener level = new IntegratedWiener(1, 1, 1469.1);
        FixedIntervalSmoother smoother = new FixedIntervalSmoother(level, 1871, new double[] {0}, new double[] {1e7});
        for (int i = 0; i < FLOW.length; i++) {
            smoother.want(1871 + i);
            smoother.observe(1871 + i, new double[] {FLOW[i]}, new double[] {NOISE});
        }
        return smoother;
    }

    @Test
    void gainSettlesAtThePublishedValue() {
        SmootherStep last = filtered().steps().get(99);
        assertThat(last.gain[0]).isCloseTo(0.267048, within(1e-6));
    }

    @Test
    void smoothedLevelsAreThePublishedOnes() {
        FixedIntervalSmoother smoother = filtered();
        smoother.smooth(100);
        assertThat(smoother.steps().get(0).state[0]).isCloseTo(1111.220, within(0.02));
        assertThat(smoother.steps().get(28).state[0]).isCloseTo(950.930, within(0.01));
    }

    @Test
    void diffuseLogLikelihoodIsThePublishedOne() {
        FixedIntervalSmoother smoother = filtered();
        double sum = -0.5 * (FLOW.length - 1) * Math.log(2 * Math.PI);
        for (int i = 1; i < FLOW.length; i++) {
            SmootherStep step = smoother.steps().get(i);
            double variance = 1 / step.inverseInnovation[0];
            sum -= 0.5 * (Math.log(variance) + step.innovation[0] * step.innovation[0] / variance);
        }
        assertThat(sum).isCloseTo(-632.544, within(0.002));
    }
}
