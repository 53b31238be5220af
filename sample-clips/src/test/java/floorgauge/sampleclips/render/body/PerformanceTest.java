package floorgauge.sampleclips.render.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.track.Joint;
import floorgauge.sampleclips.render.TestScenes;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PerformanceTest {

    private static Performance performance(int person) {
        Scene scene = TestScenes.runPast();
        List<PersonState> states = new ArrayList<>();
        for (int i = 0; i <= scene.durationSeconds() * Performance.RATE; i++) {
            states.add(scene.at((double) i / Performance.RATE).people().get(person));
        }
        return new Performance(states);
    }

    @Test
    void aFootOnTheFloorDoesNotSlide() {
        Performance p = performance(1);
        int still = 0;
        for (double t = 0.3; t < 1.7; t += 0.01) {
            Foot a = p.leftFoot(t);
            Foot b = p.leftFoot(t + 0.01);
            if (a.sole() == 0 && b.sole() == 0 && a.pitch() == 0 && b.pitch() == 0) {
                still++;
                assertThat(Math.hypot(a.x() - b.x(), a.y() - b.y())).isLessThan(1e-9);
            }
        }
        assertThat(still).isGreaterThan(20);
    }

    @Test
    void feetKeepUpWithTheBody() {
        Performance p = performance(1);
        for (double t = 0.3; t < 1.7; t += 0.02) {
            double body = 5 + 3 * t;
            assertThat((p.leftFoot(t).x() + p.rightFoot(t).x()) / 2).isCloseTo(body, within(0.45));
        }
    }

    /** Segment lengths of Drillis and Contini (1966): shank 0.246, thigh 0.245 of the height (from memory). */
    @Test
    void bonesKeepTheirLength() {
        Performance p = performance(1);
        Poser poser = new Poser(p);
        Scene scene = TestScenes.runPast();
        for (double t = 0; t < 2; t += 0.05) {
            Skeleton s = poser.pose(t, scene.at(t).people().get(1), Optional.empty());
            for (Limb leg : List.of(s.leftLeg(), s.rightLeg())) {
                assertThat(leg.hinge().minus(leg.root()).length()).isCloseTo(0.245 * 1.9, within(1e-9));
                assertThat(leg.end().minus(leg.hinge()).length()).isCloseTo(0.246 * 1.9, within(1e-9));
            }
        }
    }

    @Test
    void whoStandsHasLevelShouldersOverTheHips() {
        Poser poser = new Poser(performance(0));
        Skeleton s = poser.pose(1, TestScenes.runPast().at(1).people().get(0), Optional.empty());
        assertThat(s.joint(Joint.LEFT_SHOULDER).z())
                .isCloseTo(s.joint(Joint.RIGHT_SHOULDER).z(), within(0.02));
        assertThat(s.joint(Joint.LEFT_SHOULDER).z()).isCloseTo(0.818 * 1.9, within(0.07));
        assertThat(s.joint(Joint.NOSE).y())
                .as("faces negative y")
                .isLessThan(s.head().y());
        assertThat(s.joint(Joint.LEFT_HIP).x()).as("own left lies at greater x").isGreaterThan(8);
    }
}
