package floorgauge.sampleclips.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.SceneState;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ScenarioLibraryTest {

    private static final double STEP = 0.02;

    static List<String> scenes() {
        return ScenarioLibrary.list();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void bodiesKeepWithinHumanLimitsAndApart(String name) {
        for (long seed = 0; seed < 3; seed++) {
            PlayedScene scene = ScenarioLibrary.load(name, seed);
            SceneState before = scene.at(0);
            for (double t = STEP; t <= scene.durationSeconds(); t += STEP) {
                SceneState now = scene.at(t);
                for (int i = 0; i < now.people().size(); i++) {
                    PersonState a = before.people().get(i);
                    PersonState b = now.people().get(i);
                    String where =
                            name + ", seed " + seed + ", person " + b.person().id() + " at " + t;
                    assertThat(b.speedMetresPerSecond())
                            .as(where)
                            .isLessThanOrEqualTo(HumanLimits.SPEED_METRES_PER_SECOND);
                    double change = Math.hypot(
                            b.velocityXMetresPerSecond() - a.velocityXMetresPerSecond(),
                            b.velocityYMetresPerSecond() - a.velocityYMetresPerSecond());
                    assertThat(change / STEP)
                            .as(where)
                            .isLessThanOrEqualTo(HumanLimits.ACCELERATION_METRES_PER_SECOND_SQUARED);
                    for (int j = i + 1; j < now.people().size(); j++) {
                        assertThat(b.position().distanceTo(now.people().get(j).position()))
                                .as(where)
                                .isGreaterThan(2 * HumanLimits.BODY_RADIUS_METRES - 0.03);
                    }
                }
                before = now;
            }
        }
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void theSameSeedGivesTheSameSceneAndAnotherSeedAnother(String name) {
        PlayedScene first = ScenarioLibrary.load(name, 7);
        PlayedScene again = ScenarioLibrary.load(name, 7);
        PlayedScene other = ScenarioLibrary.load(name, 8);
        for (double t = 0; t < first.durationSeconds(); t += 0.37) {
            assertThat(again.at(t)).isEqualTo(first.at(t));
            assertThat(other.at(t)).isNotEqualTo(first.at(t));
        }
    }
}
