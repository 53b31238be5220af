package floorgauge.sampleclips.render.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.sampleclips.render.TestScenes;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.camera.Lens;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.truth.FrameTruth;
import floorgauge.sampleclips.truth.JointTruth;
import floorgauge.sampleclips.truth.PersonTruth;
import floorgauge.sampleclips.truth.Visibility;
import org.junit.jupiter.api.Test;

class FrameRendererTest {

    private static final Camera CAMERA = Camera.lookingAt(
            Lens.ofFieldOfView(640, 360, 50, -0.1), new double[] {8, -9, 2.5}, new double[] {8, 0, 1}, 0);

    private static FrameRenderer renderer(int threads, long seed) {
        RenderSettings settings = new RenderSettings(8, 0.008, 0.9, 0.013, 0.02, threads, seed);
        return new FrameRenderer(
                TestScenes.runPast(), Gym.school(RuleSet.fiba(), 0.4, 3), CameraPath.fixed(CAMERA), settings);
    }

    @Test
    void givesTheSameBytesOnAnyNumberOfThreads() {
        try (FrameRenderer one = renderer(1, 5);
                FrameRenderer three = renderer(3, 5)) {
            for (double t : new double[] {0, 0.5, 1.3}) {
                assertThat(three.render(7, t)).isEqualTo(one.render(7, t));
                assertThat(three.truth(7, t).people().get(1).joints())
                        .isEqualTo(one.truth(7, t).people().get(1).joints());
            }
        }
    }

    @Test
    void anotherSeedChangesOnlyNoiseAndDrift() {
        try (FrameRenderer a = renderer(2, 5);
                FrameRenderer b = renderer(2, 6)) {
            byte[] first = a.render(0, 0.5).clone();
            byte[] second = b.render(0, 0.5);
            assertThat(second).isNotEqualTo(first);
            double sum = 0;
            for (int i = 0; i < first.length; i++) {
                sum += Math.abs((first[i] & 255) - (second[i] & 255));
            }
            assertThat(sum / first.length).isLessThan(8);
        }
    }

    @Test
    void boxesHoldEveryJointAndFitTheBody() {
        FrameTruth truth = truth(0.2);
        for (PersonTruth p : truth.people()) {
            ImageBox box = p.box().orElseThrow();
            for (JointTruth j : p.joints()) {
                double u = j.pixel().orElseThrow().x();
                double v = j.pixel().orElseThrow().y();
                assertThat(u).isBetween(box.left(), box.right());
                assertThat(v).isBetween(box.top(), box.bottom());
            }
        }
        ImageBox box = truth.people().get(0).box().orElseThrow();
        double crown = CAMERA.pixelAt(8, 0, 1.9).orElseThrow().y();
        double sole = CAMERA.pixelAt(8, 0, 0).orElseThrow().y();
        assertThat(box.top()).isCloseTo(crown, within(4.0));
        assertThat(box.bottom()).isCloseTo(sole, within(6.0));
    }

    @Test
    void aBodyBehindAnotherIsPartlyHidden() {
        PersonTruth apart = truth(0.2).people().get(1);
        PersonTruth behind = truth(1.0).people().get(1);
        assertThat(apart.visibleFraction()).isGreaterThan(0.97);
        assertThat(behind.visibleFraction()).isLessThan(0.5);
        assertThat(truth(1.0).people().get(0).visibleFraction()).isGreaterThan(0.97);
        assertThat(behind.joints().stream()
                        .filter(j -> j.visibility() == Visibility.HIDDEN)
                        .count())
                .isGreaterThan(6);
    }

    @Test
    void earsOnTheFarSideOfTheHeadAreHidden() {
        PersonTruth runner = truth(0.2).people().get(1);
        assertThat(runner.at(Joint.RIGHT_EAR).visibility()).isEqualTo(Visibility.SEEN);
        assertThat(runner.at(Joint.LEFT_EAR).visibility()).isEqualTo(Visibility.HIDDEN);
    }

    @Test
    void theBallIsWhereItIsProjected() {
        FrameTruth truth = truth(0.2);
        byte[] bgr;
        try (FrameRenderer r = renderer(2, 5)) {
            bgr = r.render(0, 0.2).clone();
        }
        double u = truth.ball().orElseThrow().pixel().orElseThrow().x();
        double v = truth.ball().orElseThrow().pixel().orElseThrow().y();
        int i = 3 * ((int) Math.round(v) * 640 + (int) Math.round(u));
        int blue = bgr[i] & 255;
        int red = bgr[i + 2] & 255;
        assertThat(red).as("orange at the ball's middle").isGreaterThan(blue + 30);
        assertThat(truth.ball().orElseThrow().visibleFraction()).isGreaterThan(0.95);
    }

    private static FrameTruth truth(double t) {
        try (FrameRenderer r = renderer(2, 5)) {
            r.render(0, t);
            return r.truth(0, t);
        }
    }
}
