package floorgauge.sampleclips.render;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.Kit;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Small scenes whose truth can be told by hand. */
public final class TestScenes {

    private static final Kit BLUE = new Kit(0x1F3F8F, 0x1F3F8F, 0xFFFFFF, 0xEEEEEE);
    private static final Kit WHITE = new Kit(0xEEEEEE, 0xEEEEEE, 0x102040, 0x202020);

    private TestScenes() {}

    /** One player stands at (8, 0), another runs along x at 3 m/s behind the first, as a camera at negative y sees it. */
    public static Scene runPast() {
        return new RunPast();
    }

    private record RunPast() implements Scene {

        @Override
        public String name() {
            return "run-past";
        }

        @Override
        public RuleSet rules() {
            return RuleSet.fiba();
        }

        @Override
        public double durationSeconds() {
            return 2;
        }

        @Override
        public List<Person> people() {
            return List.of(
                    new Person(1, 4, "Ada Stand", Team.FIRST, 1.9, 1, 0xC99776, 0x1A1512, BLUE),
                    new Person(2, 11, "Ben Run", Team.SECOND, 1.9, 1, 0x8D5A3B, 0x1A1512, WHITE));
        }

        @Override
        public SceneState at(double t) {
            List<Person> people = people();
            PersonState stands =
                    new PersonState(people.get(0), new FloorPoint(8, 0), 0, 0, -Math.PI / 2, Action.MOVE, 0, 0, 0);
            PersonState runs = new PersonState(
                    people.get(1), new FloorPoint(5 + 3 * t, 1), 3, 0, 0, Action.MOVE, 0, 2 * Math.PI * 1.4 * t, 0);
            BallState ball = new BallState(9.5, -1, 1.2, OptionalInt.empty());
            return new SceneState(t, List.of(stands, runs), Optional.of(ball));
        }
    }
}
