package floorgauge.eval.court.view;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.Kit;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Ten players who walk and run about one half of a court, without a plan: people who stand on the lines and leave them
 * again.
 */
final class Milling implements Scene {

    private static final int PLAYERS = 10;
    private static final int[] SKINS = {0xE6BFA3, 0xC99776, 0x8D5A3B, 0x5B3A29, 0xD9AC8C};
    private static final int[] SHIRTS = {0xB3202A, 0x1F3F8F, 0xF2F2EE, 0x1D1E22, 0x2E7D4F, 0xD9A520};

    /** Turns a second of the wandering, so that a player crosses some metres in a few seconds. */
    private static final double PACE = 0.16;

    private static final double SPEED_STEP_SECONDS = 0.02;
    private static final double METRES_A_GAIT_CYCLE = 1.6;

    private final RuleSet rules;
    private final CourtEnd end;
    private final double durationSeconds;
    private final long seed;
    private final List<Person> people = new ArrayList<>();

    /**
     * @param end on which they play
     * @param seed of places and looks
     */
    Milling(RuleSet rules, CourtEnd end, double durationSeconds, long seed) {
        this.rules = rules;
        this.end = end;
        this.durationSeconds = durationSeconds;
        this.seed = seed;
        int first = (int) (Hash.unit(seed, 1, 0) * SHIRTS.length);
        int second = (first + 1 + (int) (Hash.unit(seed, 2, 0) * (SHIRTS.length - 1))) % SHIRTS.length;
        for (int i = 0; i < PLAYERS; i++) {
            int shirt = SHIRTS[i < PLAYERS / 2 ? first : second];
            people.add(new Person(
                    i + 1,
                    i + 4,
                    "player " + (i + 1),
                    i < PLAYERS / 2 ? Team.FIRST : Team.SECOND,
                    1.72 + 0.33 * Hash.unit(seed, 10, i),
                    0.9 + 0.25 * Hash.unit(seed, 11, i),
                    SKINS[(int) (Hash.unit(seed, 12, i) * SKINS.length)],
                    0x1A1512,
                    new Kit(shirt, shirt, 0x808080, 0xDDDDDD)));
        }
    }

    @Override
    public String name() {
        return "milling";
    }

    @Override
    public RuleSet rules() {
        return rules;
    }

    @Override
    public double durationSeconds() {
        return durationSeconds;
    }

    @Override
    public List<Person> people() {
        return List.copyOf(people);
    }

    @Override
    public SceneState at(double timeSeconds) {
        List<PersonState> states = new ArrayList<>();
        for (int i = 0; i < people.size(); i++) {
            states.add(state(i, timeSeconds));
        }
        return new SceneState(timeSeconds, states, Optional.empty());
    }

    private PersonState state(int i, double t) {
        double x = x(i, t);
        double y = y(i, t);
        double vx = (x(i, t + SPEED_STEP_SECONDS) - x) / SPEED_STEP_SECONDS;
        double vy = (y(i, t + SPEED_STEP_SECONDS) - y) / SPEED_STEP_SECONDS;
        return new PersonState(
                people.get(i),
                new FloorPoint(x, y),
                vx,
                vy,
                Math.atan2(vy, vx),
                i < PLAYERS / 2 ? Action.MOVE : Action.DEFEND,
                0,
                2 * Math.PI * t * Math.hypot(vx, vy) / METRES_A_GAIT_CYCLE,
                0);
    }

    private double x(int i, double t) {
        double half = rules.lengthMetres() / 2;
        double along = 0.5 + 0.55 * Hash.noise(Hash.of(seed, 20, i), t * PACE);
        return end.sign() * half * Math.max(-0.05, Math.min(0.97, along));
    }

    private double y(int i, double t) {
        double half = rules.widthMetres() / 2;
        return half * 0.95 * Hash.noise(Hash.of(seed, 21, i), t * PACE);
    }
}
