package floorgauge.sampleclips.render.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import floorgauge.court.floor.FloorPoint;
import floorgauge.sampleclips.movement.Gait;
import floorgauge.sampleclips.render.TestScenes;
import floorgauge.sampleclips.render.value.Vec3;
import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One who runs straight on at an even speed, against published figures of running. */
class RunningTest {

    private static final double SECONDS = 4;
    private static final Person RUNNER =
            TestScenes.runPast().at(0).people().get(1).person();

    private static List<PersonState> straightOn(double speed) {
        double radiansPerSecond = 2 * Math.PI * speed / Gait.strideMetres(speed, RUNNER.heightMetres());
        List<PersonState> states = new ArrayList<>();
        for (int i = 0; i <= SECONDS * Performance.RATE; i++) {
            double t = (double) i / Performance.RATE;
            states.add(new PersonState(
                    RUNNER, new FloorPoint(-12 + speed * t, 0), speed, 0, 0, Action.MOVE, 0, radiansPerSecond * t, 0));
        }
        return states;
    }

    private static List<Skeleton> skeletons(double speed) {
        List<PersonState> states = straightOn(speed);
        Poser poser = new Poser(new Performance(states));
        List<Skeleton> out = new ArrayList<>();
        for (int i = Performance.RATE; i < 3 * Performance.RATE; i++) {
            out.add(poser.pose((double) i / Performance.RATE, states.get(i), Optional.empty()));
        }
        return out;
    }

    private static double lower(Skeleton s) {
        return Math.min(s.leftLeg().end().z(), s.rightLeg().end().z());
    }

    /**
     * Contact in seconds: 0.26, 0.21, 0.18, 0.16 at 3 to 6 m/s (Nilsson and Thorstensson, 1989; Weyand and others, 2000; from
     * memory), for a person 1.8 m tall.
     */
    @ParameterizedTest
    @CsvSource({"3, 0.26", "4, 0.21", "5, 0.18", "6, 0.16"})
    void contactLastsAsLongAsPublished(double speed, double seconds) {
        double stride = Gait.strideMetres(speed, 1.8) / speed;
        assertThat((1 - Gait.swingShare(speed)) * stride).isCloseTo(seconds, within(0.012));
    }

    /** Of a walker's stride each foot is on the floor for 0.60 to 0.62 (Winter, 2009; from memory). */
    @Test
    void aWalkerAlwaysHasAFootOnTheFloor() {
        assertThat(Gait.swingShare(1.4)).isEqualTo(0.38);
        assertThat(skeletons(1.4)).allSatisfy(s -> assertThat(lower(s)).isLessThan(0.10));
    }

    /** A flight of 0.1 s lifts a body by about a centimetre; a foot is low until it lands, and the other has just left. */
    @ParameterizedTest
    @CsvSource({"2.5, 0.14, 0.12", "3, 0.17, 0.20", "4, 0.21, 0.28"})
    void oneFootIsNearTheFloorThroughTheFlight(double speed, double highest, double shareAbove) {
        List<Skeleton> run = skeletons(speed);
        double standing = RUNNER.heightMetres() * 0.039;
        assertThat(run).allSatisfy(s -> assertThat(lower(s)).isLessThan(highest));
        double above = run.stream().filter(s -> lower(s) > standing + 0.05).count() / (double) run.size();
        assertThat(above).as("time in which both ankles are over 5 cm up").isLessThan(shareAbove);
    }

    /** The swinging ankle is the fastest part of a runner: about twice and a half as fast as the body. */
    @ParameterizedTest
    @ValueSource(doubles = {1.4, 2.2, 3, 4, 5, 6})
    void anklesDoNotLeap(double speed) {
        List<Skeleton> run = skeletons(speed);
        for (int i = 1; i < run.size(); i++) {
            Vec3 way = run.get(i).leftLeg().end().minus(run.get(i - 1).leftLeg().end());
            assertThat(way.length() * Performance.RATE).isLessThan(2.5 * speed + 2);
        }
    }
}
