package floorgauge.sampleclips.render.camera;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.sampleclips.render.RenderPlan;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.scene.PersonState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CameraStyleTest {

    private static final double STEP_SECONDS = 0.25;

    private static CameraPath path(PlayedScene scene, CameraStyle style, long seed) {
        return RenderPlan.of(scene, scene.end(), style, seed).path();
    }

    /** Common practice: a coach tells whoever films to keep the players' feet in the picture. */
    @ParameterizedTest
    @EnumSource(CameraStyle.class)
    void feetStayInThePicture(CameraStyle style) {
        int in = 0;
        int all = 0;
        for (long seed = 1; seed <= 3; seed++) {
            PlayedScene scene = ScenarioLibrary.load("double-drag-sound", seed);
            CameraPath path = path(scene, style, seed);
            for (double t = 0; t <= scene.durationSeconds(); t += STEP_SECONDS) {
                Camera camera = path.at(t);
                for (PersonState person : scene.at(t).people()) {
                    var foot = camera.pixelAt(
                            person.position().xMetres(), person.position().yMetres(), 0);
                    boolean seen = foot.isPresent()
                            && foot.get().x() >= 0
                            && foot.get().x() < camera.lens().width()
                            && foot.get().y() >= 0
                            && foot.get().y() < camera.lens().height();
                    in += seen ? 1 : 0;
                    all++;
                }
            }
        }
        assertThat((double) in / all).isGreaterThan(0.9);
    }

    @Test
    void anOperatorPansAndZooms() {
        PlayedScene scene = ScenarioLibrary.load("double-drag-sound", 1);
        CameraPath path = path(scene, CameraStyle.OPERATOR, 1);
        assertThat(range(path, scene, c -> c.lens().fx()) / path.at(0).lens().fx())
                .isGreaterThan(0.05);
        assertThat(range(path, scene, c -> Math.atan2(c.rotation()[7], c.rotation()[6])))
                .isGreaterThan(0.05);
        assertThat(range(path, scene, c -> c.position()[2])).isLessThan(1e-9);
    }

    @Test
    void aPhoneShakesSwaysAndRolls() {
        PlayedScene scene = ScenarioLibrary.load("double-drag-sound", 1);
        CameraPath path = path(scene, CameraStyle.PHONE, 1);
        assertThat(range(path, scene, c -> c.lens().fx())).isLessThan(1e-9);
        assertThat(range(path, scene, c -> c.position()[2])).isBetween(0.005, 0.2);
        assertThat(range(path, scene, c -> c.rotation()[2])).isBetween(0.002, 0.1);
    }

    private static double range(
            CameraPath path, PlayedScene scene, java.util.function.ToDoubleFunction<Camera> figure) {
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        for (double t = 0; t <= scene.durationSeconds(); t += STEP_SECONDS) {
            double value = figure.applyAsDouble(path.at(t));
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        return most - least;
    }
}
