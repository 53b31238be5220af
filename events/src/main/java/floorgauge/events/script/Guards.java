package floorgauge.events.script;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.matchup.Assignment;
import floorgauge.events.step.SmoothTrail;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * Who guards whom before something happens: each defender's usual place is three tenths of the way from his man to the rim, and men are
 * shared out so that the mean distances to those places over the seconds before are least in sum.
 */
final class Guards {

    private static final double BEFORE_SECONDS = 4;
    private static final double UNTIL_SECONDS = 0.3;
    private static final double STEP_SECONDS = 0.2;
    private static final double TOWARD_RIM = 0.3;
    private static final double FAR = 100;

    private final List<SmoothTrail> attackers = new ArrayList<>();
    private final List<SmoothTrail> defenders = new ArrayList<>();
    private final FloorPoint rim;

    Guards(Collection<SmoothTrail> trails, FloorPoint rim) {
        trails.forEach(t -> (t.attacking() ? attackers : defenders).add(t));
        this.rim = rim;
    }

    /** The guard of an attacker in the seconds before a time; empty where there is none. */
    Optional<SmoothTrail> of(int attacker, double seconds) {
        double[][] cost = new double[attackers.size()][defenders.size()];
        int row = -1;
        for (int a = 0; a < attackers.size(); a++) {
            row = attackers.get(a).trackId() == attacker ? a : row;
            for (int d = 0; d < defenders.size(); d++) {
                cost[a][d] = mean(attackers.get(a), defenders.get(d), seconds);
            }
        }
        if (row < 0 || defenders.isEmpty()) {
            return Optional.empty();
        }
        int guard = Assignment.least(cost)[row];
        return guard < 0 || cost[row][guard] >= FAR ? Optional.empty() : Optional.of(defenders.get(guard));
    }

    private double mean(SmoothTrail attacker, SmoothTrail defender, double seconds) {
        double sum = 0;
        int count = 0;
        for (double t = seconds - UNTIL_SECONDS; t >= seconds - BEFORE_SECONDS; t -= STEP_SECONDS) {
            if (attacker.covers(t) && defender.covers(t)) {
                FloorPoint man = attacker.at(t);
                FloorPoint usual = new FloorPoint(
                        man.xMetres() + TOWARD_RIM * (rim.xMetres() - man.xMetres()),
                        man.yMetres() + TOWARD_RIM * (rim.yMetres() - man.yMetres()));
                sum += usual.distanceTo(defender.at(t));
                count++;
            }
        }
        return count == 0 ? FAR : sum / count;
    }
}
