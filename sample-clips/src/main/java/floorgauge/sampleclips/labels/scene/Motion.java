package floorgauge.sampleclips.labels.scene;

import floorgauge.court.floor.FloorPoint;
import floorgauge.sampleclips.movement.FloorVector;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.scenario.Control;
import floorgauge.sampleclips.scenario.Guarding;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.SceneState;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntPredicate;

/** A scene at every hundredth of a second. Ticks count from 0. */
final class Motion {

    static final double TICK = 0.01;

    private final PlayedScene scene;
    private final List<SceneState> states = new ArrayList<>();
    private final FloorVector rim;

    Motion(PlayedScene scene) {
        this.scene = scene;
        int last = (int) Math.round(scene.durationSeconds() / TICK);
        for (int i = 0; i <= last; i++) {
            states.add(scene.at(Math.min(scene.durationSeconds(), i * TICK)));
        }
        FloorPoint point = scene.rules().rim(scene.end());
        rim = FloorVector.of(point);
    }

    PlayedScene scene() {
        return scene;
    }

    int ticks() {
        return states.size();
    }

    double time(int tick) {
        return tick * TICK;
    }

    /** The tick at which the possession ends: a shot's release, the reception of a lost pass, else the last one. */
    int possessionEnd() {
        for (Control control : scene.controls()) {
            if (control.kind() == Control.Kind.SHOT) {
                return tick(control.fromSeconds());
            }
            if (control.to().isPresent() && defenders().contains(control.to().getAsInt())) {
                return tick(control.toSeconds());
            }
        }
        return states.size() - 1;
    }

    /** The tick of a time, within the scene. */
    int tick(double seconds) {
        return Math.max(0, Math.min(states.size() - 1, (int) Math.round(seconds / TICK)));
    }

    FloorVector rim() {
        return rim;
    }

    List<Integer> attackers() {
        return scene.attackers();
    }

    List<Integer> defenders() {
        return scene.defenders();
    }

    PersonState person(int tick, int id) {
        return states.get(tick).people().get(id - 1);
    }

    FloorVector position(int tick, int id) {
        return FloorVector.of(person(tick, id).position());
    }

    FloorVector velocity(int tick, int id) {
        PersonState state = person(tick, id);
        return new FloorVector(state.velocityXMetresPerSecond(), state.velocityYMetresPerSecond());
    }

    double speed(int tick, int id) {
        return person(tick, id).speedMetresPerSecond();
    }

    double distance(int tick, int a, int b) {
        return position(tick, a).distanceTo(position(tick, b));
    }

    /** Between the envelopes of two bodies; below 0 where they press into each other. */
    double gap(int tick, int a, int b) {
        return distance(tick, a, b) - 2 * HumanLimits.BODY_RADIUS_METRES;
    }

    double toRim(int tick, int id) {
        return position(tick, id).distanceTo(rim);
    }

    OptionalInt controller(int tick) {
        return states.get(tick).ball().orElseThrow().controlledBy();
    }

    boolean controls(int tick, int id) {
        OptionalInt controller = controller(tick);
        return controller.isPresent() && controller.getAsInt() == id;
    }

    FloorVector ball(int tick) {
        var ball = states.get(tick).ball().orElseThrow();
        return new FloorVector(ball.xMetres(), ball.yMetres());
    }

    /** Who guards an attacker. */
    int defenderOf(int tick, int attacker) {
        Guarding now = scene.guarding().get(0);
        for (Guarding guarding : scene.guarding()) {
            if (guarding.fromSeconds() <= time(tick) + 1e-9) {
                now = guarding;
            }
        }
        return now.men().entrySet().stream()
                .filter(e -> e.getValue() == attacker)
                .mapToInt(e -> e.getKey())
                .findFirst()
                .orElseGet(() -> nearestDefender(tick, attacker));
    }

    /** The defender nearest to an attacker. */
    int nearestDefender(int tick, int attacker) {
        int nearest = defenders().get(0);
        for (int defender : defenders()) {
            if (distance(tick, attacker, defender) < distance(tick, attacker, nearest)) {
                nearest = defender;
            }
        }
        return nearest;
    }

    /** Distance from an attacker to the nearest defender. */
    double openness(int tick, int attacker) {
        return distance(tick, attacker, nearestDefender(tick, attacker));
    }

    /**
     * A maximal run of ticks.
     *
     * @param first its first tick
     * @param last its last tick
     */
    record Spell(int first, int last) {

        double seconds() {
            return (last - first + 1) * TICK;
        }
    }

    /** Maximal runs of at least some seconds, within the possession, in which a condition holds. */
    List<Spell> spells(IntPredicate condition, double leastSeconds) {
        List<Spell> spells = new ArrayList<>();
        int first = -1;
        int end = possessionEnd();
        for (int i = 0; i <= end + 1; i++) {
            boolean holds = i <= end && condition.test(i);
            if (holds && first < 0) {
                first = i;
            } else if (!holds && first >= 0) {
                Spell spell = new Spell(first, i - 1);
                if (spell.seconds() >= leastSeconds) {
                    spells.add(spell);
                }
                first = -1;
            }
        }
        return spells;
    }
}
