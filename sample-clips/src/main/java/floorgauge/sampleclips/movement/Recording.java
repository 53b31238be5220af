package floorgauge.sampleclips.movement;

import floorgauge.court.floor.FloorPoint;
import floorgauge.sampleclips.scene.PersonState;
import java.util.ArrayList;
import java.util.List;

/**
 * Recorded motion of some people, tick by tick; immutable once built. Between two ticks a body moves under the constant
 * acceleration that it was moved with, so positions and velocities are those of the exact motion.
 */
public final class Recording {

    private final List<List<PersonState>> ticks;

    /** @param ticks states of all people, in order of id, at every tick from time 0; at least two ticks */
    public Recording(List<List<PersonState>> ticks) {
        if (ticks.size() < 2) {
            throw new IllegalArgumentException("a recording needs two ticks");
        }
        this.ticks = ticks.stream().map(List::copyOf).toList();
    }

    public double durationSeconds() {
        return (ticks.size() - 1) * Bodies.TICK_SECONDS;
    }

    /** @param timeSeconds from 0 to the duration */
    public List<PersonState> at(double timeSeconds) {
        if (!(timeSeconds >= 0 && timeSeconds <= durationSeconds() + 1e-9)) {
            throw new IllegalArgumentException("time must lie in 0 to " + durationSeconds() + ": " + timeSeconds);
        }
        int tick = Math.min(ticks.size() - 2, (int) (timeSeconds / Bodies.TICK_SECONDS));
        double into = timeSeconds - tick * Bodies.TICK_SECONDS;
        List<PersonState> before = ticks.get(tick);
        List<PersonState> after = ticks.get(tick + 1);
        List<PersonState> states = new ArrayList<>(before.size());
        for (int i = 0; i < before.size(); i++) {
            states.add(between(before.get(i), after.get(i), into));
        }
        return states;
    }

    private static PersonState between(PersonState a, PersonState b, double into) {
        // A time a rounding error outside its tick would push a phase below 0 or beyond 1.
        double share = Math.max(0, Math.min(1, into / Bodies.TICK_SECONDS));
        double ax = (b.velocityXMetresPerSecond() - a.velocityXMetresPerSecond()) / Bodies.TICK_SECONDS;
        double ay = (b.velocityYMetresPerSecond() - a.velocityYMetresPerSecond()) / Bodies.TICK_SECONDS;
        double turn = StrictMath.IEEEremainder(b.facingRadians() - a.facingRadians(), 2 * Math.PI);
        boolean sameAction = a.action() == b.action() && b.actionPhase() >= a.actionPhase();
        return new PersonState(
                a.person(),
                new FloorPoint(
                        a.position().xMetres() + a.velocityXMetresPerSecond() * into + ax * into * into / 2,
                        a.position().yMetres() + a.velocityYMetresPerSecond() * into + ay * into * into / 2),
                a.velocityXMetresPerSecond() + ax * into,
                a.velocityYMetresPerSecond() + ay * into,
                a.facingRadians() + share * turn,
                a.action(),
                sameAction ? a.actionPhase() + share * (b.actionPhase() - a.actionPhase()) : a.actionPhase(),
                a.gaitPhaseRadians() + share * (b.gaitPhaseRadians() - a.gaitPhaseRadians()),
                a.jumpMetres() + share * (b.jumpMetres() - a.jumpMetres()));
    }
}
