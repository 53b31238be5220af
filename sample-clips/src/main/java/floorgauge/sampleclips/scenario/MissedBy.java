package floorgauge.sampleclips.scenario;

import floorgauge.sampleclips.movement.Bodies;
import floorgauge.sampleclips.movement.HumanLimits;
import floorgauge.sampleclips.scene.PersonState;
import java.util.List;

/**
 * By how much a screen missed, as it came out.
 *
 * @param gapMetres least gap between screener and defender about the user's passing
 * @param passingMetres least distance of user and screener while the user runs
 */
record MissedBy(double gapMetres, double passingMetres) {

    private static final double RUNS = 1.5;
    /** Farther off than this no one would call it a use of the screen. */
    private static final double USED_WITHIN = 1.8;

    static MissedBy of(Floor floor, Step step, double setSeconds) {
        List<Role> roles = List.copyOf(floor.movers().keySet());
        int screener = roles.indexOf(step.who());
        int user = roles.indexOf(step.forWhom().orElseThrow());
        int defender = roles.indexOf(step.other().orElseThrow());
        int from = (int) Math.round(setSeconds / Bodies.TICK_SECONDS);
        int to = Math.min(floor.ticks().size() - 1, from + 300);
        int passing = from;
        double least = Double.MAX_VALUE;
        for (int i = from; i <= to; i++) {
            List<PersonState> now = floor.ticks().get(i);
            double distance = distance(now, user, screener);
            if (now.get(user).speedMetresPerSecond() >= RUNS && distance < least) {
                least = distance;
                passing = i;
            }
        }
        double gap = Double.MAX_VALUE;
        for (int i = Math.max(0, passing - 100); i <= Math.min(floor.ticks().size() - 1, passing + 150); i++) {
            gap = Math.min(
                    gap, distance(floor.ticks().get(i), defender, screener) - 2 * HumanLimits.BODY_RADIUS_METRES);
        }
        return new MissedBy(gap, least);
    }

    private static double distance(List<PersonState> people, int a, int b) {
        return people.get(a).position().distanceTo(people.get(b).position());
    }

    /** Distance from a wanted size; a screen that nobody uses is worse than any size. */
    double error(double wantedMetres) {
        return Math.abs(gapMetres - wantedMetres) + (passingMetres > USED_WITHIN ? 10 : 0);
    }
}
