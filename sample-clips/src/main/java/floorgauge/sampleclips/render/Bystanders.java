package floorgauge.sampleclips.render;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.CourtEnd;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import floorgauge.sampleclips.render.gym.Fittings;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.scene.Action;
import floorgauge.sampleclips.scene.Kit;
import floorgauge.sampleclips.scene.Person;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;
import java.util.ArrayList;
import java.util.List;

/**
 * A scene with a coach on the side line, a referee near the centre line and players on the benches added to it. They are
 * people of the scene like all others, with ids from 101, and are left out where the scene has staff of its own.
 */
public final class Bystanders implements Scene {

    private static final int FIRST_ID = 101;
    private static final int[] SKINS = {0xE6BFA3, 0xC99776, 0x8D5A3B, 0x5B3A29, 0xD9AC8C};
    private static final int[] HAIRS = {0x1A1512, 0x3B2A1E, 0x6B4A2E, 0x8A8580, 0x0E0D0D};

    private final Scene inner;
    private final List<Person> people;
    private final List<Person> added = new ArrayList<>();
    private final List<FloorPoint> places = new ArrayList<>();
    private final long seed;
    private final int side;

    /** @param end that is played on */
    public Bystanders(Scene inner, Gym gym, CourtEnd end, long seed) {
        this.inner = inner;
        this.seed = seed;
        side = end.sign();
        boolean hasStaff = inner.people().stream().anyMatch(p -> p.team() == Team.STAFF || p.team() == Team.OFFICIAL);
        if (!hasStaff) {
            double half = inner.rules().lengthMetres() / 2;
            double line = inner.rules().widthMetres() / 2;
            add(Team.STAFF, new Kit(0x2F3A46, 0x22252A, 0xFFFFFF, 0xDDDDDD), side * half * 0.42, line + 0.9);
            add(Team.OFFICIAL, new Kit(0x8F959B, 0x1B1C1F, 0x000000, 0x151515), side * half * 0.10, -line * 0.35);
            sit(gym);
        }
        people = new ArrayList<>(inner.people());
        people.addAll(added);
    }

    private void sit(Gym gym) {
        Kit first = kitOf(Team.FIRST);
        Kit second = kitOf(Team.SECOND);
        int seat = 0;
        for (double bench : Fittings.benchPlaces(gym)) {
            for (double offset : new double[] {-0.75, -0.1, 0.6}) {
                if (Hash.unit(seed, 300, seat++) < 0.55) {
                    Kit kit = bench < 0 ? first : second;
                    add(bench < 0 ? Team.FIRST : Team.SECOND, kit, bench + offset, Fittings.benchY(gym) - 0.05);
                }
            }
        }
    }

    private Kit kitOf(Team team) {
        return inner.people().stream()
                .filter(p -> p.team() == team)
                .map(Person::kit)
                .findFirst()
                .orElse(new Kit(0x55606B, 0x2B2E33, 0xFFFFFF, 0xEEEEEE));
    }

    private void add(Team team, Kit kit, double x, double y) {
        int id = FIRST_ID + added.size();
        long h = Hash.of(seed, id);
        Team role = team == Team.OFFICIAL ? Team.OFFICIAL : Team.STAFF;
        added.add(new Person(
                id,
                -1,
                "bystander " + (added.size() + 1),
                role,
                1.70 + 0.25 * Hash.unit(Hash.mix(h + 1)),
                0.95 + 0.2 * Hash.unit(Hash.mix(h + 2)),
                SKINS[(int) (Hash.unit(Hash.mix(h + 3)) * SKINS.length)],
                HAIRS[(int) (Hash.unit(Hash.mix(h + 4)) * HAIRS.length)],
                kit));
        places.add(new FloorPoint(x, y));
    }

    @Override
    public String name() {
        return inner.name();
    }

    @Override
    public RuleSet rules() {
        return inner.rules();
    }

    @Override
    public double durationSeconds() {
        return inner.durationSeconds();
    }

    @Override
    public List<Person> people() {
        return List.copyOf(people);
    }

    @Override
    public SceneState at(double timeSeconds) {
        SceneState state = inner.at(timeSeconds);
        List<PersonState> all = new ArrayList<>(state.people());
        for (int i = 0; i < added.size(); i++) {
            all.add(bystander(i, timeSeconds));
        }
        return new SceneState(state.timeSeconds(), all, state.ball());
    }

    private PersonState bystander(int i, double timeSeconds) {
        Person person = added.get(i);
        FloorPoint at = places.get(i);
        double play = side * inner.rules().lengthMetres() * 0.3;
        double facing = Math.atan2(-at.yMetres(), play - at.xMetres());
        boolean sits = at.yMetres() > inner.rules().widthMetres() / 2 + 1.5;
        double turned = sits
                ? -Math.PI / 2 + 0.4 * Hash.noise(Hash.of(seed, i), timeSeconds * 0.25)
                : facing + 0.3 * Hash.noise(Hash.of(seed, i), timeSeconds * 0.3);
        return new PersonState(person, at, 0, 0, turned, sits ? Action.SIT : Action.MOVE, 0, 0, 0);
    }
}
