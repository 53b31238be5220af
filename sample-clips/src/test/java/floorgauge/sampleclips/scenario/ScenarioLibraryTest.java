package floorgauge.sampleclips.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import floorgauge.court.failure.MendableException;
import floorgauge.events.finding.FindingKind;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.SceneState;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ScenarioLibraryTest {

    private static final double STEP = 0.02;
    private static final int SEEDS = 20;
    /** Bodies in a crowd give by so much. */
    private static final double PRESSED = 0.05;

    private static final Map<String, PlayedScene> LOADED = new ConcurrentHashMap<>();

    static List<String> scenes() {
        return ScenarioLibrary.list();
    }

    static List<String> sound() {
        return scenes().stream().filter(n -> n.endsWith("-sound")).toList();
    }

    private static PlayedScene scene(String name, long seed) {
        return LOADED.computeIfAbsent(name + " " + seed, k -> ScenarioLibrary.load(name, seed));
    }

    @Test
    void theLibraryHasTwoDozenScenariosEachSoundAndBroken() {
        List<String> sound = scenes().stream().filter(n -> n.endsWith("-sound")).toList();
        assertThat(sound).hasSizeGreaterThanOrEqualTo(24);
        for (String name : sound) {
            String scenario = name.substring(0, name.length() - "sound".length());
            assertThat(scenes().stream().filter(n -> n.startsWith(scenario)).count())
                    .as(name)
                    .isGreaterThan(1);
        }
    }

    @Test
    void anUnknownNameIsRefused() {
        assertThatThrownBy(() -> ScenarioLibrary.load("pin-up-sound", 0))
                .isInstanceOf(MendableException.class)
                .hasMessage("no scenario 'pin-up-sound' in the library; --list names them");
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void bodiesKeepWithinHumanLimitsAndApart(String name) {
        long seed = 1;
        PlayedScene scene = scene(name, seed);
        double speed = 0;
        double acceleration = 0;
        double apart = Double.MAX_VALUE;
        SceneState before = scene.at(0);
        for (double t = STEP; t <= scene.durationSeconds(); t += STEP) {
            SceneState now = scene.at(t);
            for (int i = 0; i < now.people().size(); i++) {
                PersonState a = before.people().get(i);
                PersonState b = now.people().get(i);
                speed = Math.max(speed, b.speedMetresPerSecond());
                double change = Math.hypot(
                        b.velocityXMetresPerSecond() - a.velocityXMetresPerSecond(),
                        b.velocityYMetresPerSecond() - a.velocityYMetresPerSecond());
                acceleration = Math.max(acceleration, change / STEP);
                for (int j = i + 1; j < now.people().size(); j++) {
                    apart = Math.min(
                            apart, b.position().distanceTo(now.people().get(j).position()));
                }
            }
            before = now;
        }
        String where = name + ", seed " + seed;
        assertThat(speed).as(where).isLessThanOrEqualTo(HumanLimits.SPEED_METRES_PER_SECOND);
        assertThat(acceleration).as(where).isLessThanOrEqualTo(HumanLimits.ACCELERATION_METRES_PER_SECOND_SQUARED);
        assertThat(apart).as(where).isGreaterThanOrEqualTo(2 * HumanLimits.BODY_RADIUS_METRES - PRESSED);
    }

    /** Nothing jumps: no ball of a hand or of a pass is faster than a hard pass, common practice 15 m/s. */
    @ParameterizedTest
    @MethodSource("scenes")
    void theBallMovesWithoutAJump(String name) {
        PlayedScene scene = scene(name, 1);
        double most = 0;
        double lowest = 1;
        BallState before = scene.at(0).ball().orElseThrow();
        for (double t = 0.01; t <= scene.durationSeconds(); t += 0.01) {
            BallState now = scene.at(t).ball().orElseThrow();
            most = Math.max(
                    most,
                    Math.sqrt(Math.pow(now.xMetres() - before.xMetres(), 2)
                            + Math.pow(now.yMetres() - before.yMetres(), 2)
                            + Math.pow(now.zMetres() - before.zMetres(), 2)));
            lowest = Math.min(lowest, now.zMetres());
            before = now;
        }
        assertThat(most / 0.01).as(name).isLessThan(15);
        assertThat(lowest).as(name).isGreaterThan(0.1);
    }

    @ParameterizedTest
    @MethodSource("sound")
    void theSameSeedGivesTheSameSceneAndAnotherSeedAnother(String name) {
        PlayedScene first = scene(name, 1);
        PlayedScene again = ScenarioLibrary.load(name, 1);
        PlayedScene other = scene(name, 2);
        for (double t = 0; t < Math.min(first.durationSeconds(), other.durationSeconds()); t += 0.37) {
            assertThat(again.at(t)).isEqualTo(first.at(t));
            assertThat(other.at(t)).isNotEqualTo(first.at(t));
        }
    }

    private static List<LabelledEvent> events(String name, long seed) {
        return SceneLabeller.label(scene(name, seed), seed).events();
    }

    private static LabelledEvent screen(String name, long seed) {
        return events(name, seed).stream()
                .filter(e -> e.kind() == FindingKind.SCREEN && !e.cantTell().contains(LabelledEvent.EXISTENCE))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + ", seed " + seed + ": no screen"));
    }

    @ParameterizedTest
    @CsvSource({"pin-down", "high-ball-screen", "ball-screen-over", "triangle-corner", "elevator"})
    void aSoundScreenMakesContactAtRest(String scenario) {
        for (long seed = 1; seed < 4; seed++) {
            LabelledEvent screen = screen(scenario + "-sound", seed);
            assertThat(screen.figure(FigureNames.CONTACT_TIME).orElseThrow())
                    .as(scenario + ", seed " + seed)
                    .isGreaterThan(0.12);
            assertThat(screen.figure(FigureNames.SET_SHARE).orElseThrow())
                    .as(scenario + ", seed " + seed)
                    .isGreaterThan(0.6);
        }
    }

    @ParameterizedTest
    @CsvSource({"pin-down,screen-misses", "high-ball-screen,screen-misses", "elevator,doors-open"})
    void aScreenThatMissesMakesNoContactAndIsFlagged(String scenario, String version) {
        for (long seed = 1; seed < 4; seed++) {
            String name = scenario + "-" + version;
            LabelledEvent screen = screen(name, seed);
            assertThat(screen.figure(FigureNames.CONTACT_TIME).orElseThrow())
                    .as(name + ", seed " + seed)
                    .isLessThan(0.12);
            assertThat(screen.figure(FigureNames.GAP).orElseThrow())
                    .as(name + ", seed " + seed)
                    .isGreaterThan(0.1);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "pin-down-screener-moving,moving screen",
        "pin-down-pass-stolen,turnover",
        "elevator-doors-open,weak screen",
        "stalled-ball-stops,stalled ball",
        "elevator-pass-held,late pass",
        "isolation-crowded,crowded floor"
    })
    void aFaultEarnsItsFlagAndTheSoundVersionDoesNot(String name, String flag) {
        String sound =
                name.replaceFirst("-(screener-moving|doors-open|ball-stops|pass-held|pass-stolen|crowded)$", "-sound");
        for (long seed = 1; seed < 3; seed++) {
            assertThat(events(name, seed))
                    .as(name + ", seed " + seed)
                    .anyMatch(e -> e.kind().words().equals(flag));
            assertThat(events(sound, seed))
                    .as(sound + ", seed " + seed)
                    .noneMatch(e -> e.kind().words().equals(flag));
        }
    }

    /** A seed only moves places and times a little: none may make a scenario impossible, or a sound one faulty. */
    @ParameterizedTest
    @MethodSource("sound")
    void aSoundScenarioPlaysWithTwentySeedsAndEarnsNoFlag(String name) {
        int flagged = 0;
        int through = 0;
        for (long seed = 1; seed <= SEEDS; seed++) {
            PlayedScene scene = ScenarioLibrary.load(name, seed);
            through += PassLanes.throughBodies(scene) > 0 ? 1 : 0;
            List<LabelledEvent> flags = SceneLabeller.label(scene, seed).events().stream()
                    .filter(e -> e.kind().isFlag() && !e.cantTell().contains(LabelledEvent.EXISTENCE))
                    .toList();
            flagged += flags.isEmpty() ? 0 : 1;
        }
        assertThat(flagged).as(name + ": seeds with a flag").isLessThanOrEqualTo(SEEDS / 10);
        assertThat(through).as(name + ": seeds with a pass through a body").isLessThanOrEqualTo(3 * SEEDS / 20);
    }

    static List<String> faulty() {
        return scenes().stream().filter(n -> !n.endsWith("-sound")).toList();
    }

    /** What a version is for: its fault shows in the true labels, by the same definitions that the program measures by. */
    @ParameterizedTest
    @MethodSource("faulty")
    void aFaultShowsInTheTruth(String name) {
        assertThat(FaultShown.unseen(ScenarioLibrary.faults(name), scene(name, 1), 1))
                .as(name + ", seed 1: faults that can't be seen")
                .isZero();
    }

    @Test
    void everyVersionShowsItsFaultWithTwentySeeds() {
        Assumptions.assumeTrue(
                Boolean.getBoolean("floorgauge.allSeeds"), "give -Dfloorgauge.allSeeds=true: a quarter of an hour");
        int unseen = 0;
        for (String name : faulty()) {
            for (long seed = 1; seed <= SEEDS; seed++) {
                PlayedScene scene = ScenarioLibrary.load(name, seed);
                if (FaultShown.unseen(ScenarioLibrary.faults(name), scene, seed) > 0) {
                    System.out.println(name + ", seed " + seed + ": the fault can't be seen");
                    unseen++;
                }
            }
        }
        assertThat(unseen).as("versions whose fault can't be seen").isLessThanOrEqualTo(faulty().size() * SEEDS / 100);
    }
}
