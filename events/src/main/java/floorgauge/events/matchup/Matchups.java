package floorgauge.events.matchup;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.AttackGeometry;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import java.util.List;
import java.util.Optional;

/**
 * Who guards whom through a play. A defender's usual place is on the line from his man to the rim, 0.3 of the way (Franks,
 * Miller, Bornn, Goldsberry, Characterizing the Spatial Structure of Defensive Skill in Professional Basketball, 2015, give
 * 0.62 man, 0.11 ball, 0.27 rim; from memory; without the ball the two are scaled to sum to one). At each step of 0.2 s the
 * men are shared out so that the distances to those places, averaged over 1.2 s, are least in sum.
 */
public final class Matchups {

    private static final int STEP_TICKS = UniformClock.ticks(0.2);
    private static final int HALF_WINDOW_TICKS = UniformClock.ticks(0.6);
    private static final double RIM_SHARE = 0.3;
    private static final double UNSEEN_COST = 50;
    private static final double STAYS_METRES = 0.5;

    private final Play play;
    private final List<PlayerPath> attackers;
    private final List<PlayerPath> defenders;
    /** Defender's index for each step and attacker, or -1. */
    private final int[][] guard;

    public Matchups(Play play) {
        this.play = play;
        this.attackers = play.attackers();
        this.defenders = play.defenders();
        int steps = (play.size() - 1) / STEP_TICKS + 1;
        double[][][] costs = new double[steps][][];
        for (int s = 0; s < steps; s++) {
            costs[s] = cost(s * STEP_TICKS);
        }
        this.guard = new int[steps][];
        int half = HALF_WINDOW_TICKS / STEP_TICKS;
        for (int s = 0; s < steps; s++) {
            double[][] windowed = windowed(costs, Math.max(0, s - half), Math.min(steps - 1, s + half), s);
            if (s > 0) {
                favour(guard[s - 1], windowed);
            }
            guard[s] = Assignment.least(windowed);
            dropUnseen(guard[s], costs[s]);
        }
    }

    private double[][] cost(int i) {
        AttackGeometry geometry = play.geometry();
        double[][] cost = new double[attackers.size()][defenders.size()];
        for (int a = 0; a < attackers.size(); a++) {
            PlayerPath man = attackers.get(a);
            for (int d = 0; d < defenders.size(); d++) {
                PlayerPath defender = defenders.get(d);
                if (!man.seen(i) || !defender.seen(i)) {
                    cost[a][d] = UNSEEN_COST;
                    continue;
                }
                double x = man.x(i) + RIM_SHARE * (geometry.rimX() - man.x(i));
                double y = man.y(i) * (1 - RIM_SHARE);
                cost[a][d] = Math.min(defender.distanceTo(x, y, i), Math.max(0, defender.distanceTo(man, i) - 0.5));
            }
        }
        return cost;
    }

    private double[][] windowed(double[][][] costs, int from, int to, int at) {
        double[][] mean = new double[attackers.size()][defenders.size()];
        for (int a = 0; a < attackers.size(); a++) {
            for (int d = 0; d < defenders.size(); d++) {
                double sum = 0;
                int count = 0;
                for (int s = from; s <= to; s++) {
                    if (costs[s][a][d] < UNSEEN_COST) {
                        sum += costs[s][a][d];
                        count++;
                    }
                }
                mean[a][d] = count == 0 || costs[at][a][d] >= UNSEEN_COST ? UNSEEN_COST : sum / count;
            }
        }
        return mean;
    }

    /** Who guards a man goes on to, until another is nearer by more than a step. */
    private static void favour(int[] before, double[][] cost) {
        for (int a = 0; a < before.length; a++) {
            if (before[a] >= 0) {
                cost[a][before[a]] -= STAYS_METRES;
            }
        }
    }

    private static void dropUnseen(int[] guard, double[][] cost) {
        for (int a = 0; a < guard.length; a++) {
            if (guard[a] >= 0 && cost[a][guard[a]] >= UNSEEN_COST) {
                guard[a] = -1;
            }
        }
    }

    /** Who guards an attacker at an index; empty where nobody does or it was not seen. */
    public Optional<PlayerPath> guardOf(PlayerPath attacker, int i) {
        int a = attackers.indexOf(attacker);
        if (a < 0) {
            throw new IllegalArgumentException("track " + attacker.trackId() + " does not attack");
        }
        int d = guard[step(i)][a];
        return d < 0 ? Optional.empty() : Optional.of(defenders.get(d));
    }

    /** Whom a defender guards at an index. */
    public Optional<PlayerPath> manOf(PlayerPath defender, int i) {
        int d = defenders.indexOf(defender);
        int[] here = guard[step(i)];
        for (int a = 0; a < here.length; a++) {
            if (here[a] == d && d >= 0) {
                return Optional.of(attackers.get(a));
            }
        }
        return Optional.empty();
    }

    /** Who guarded an attacker for the longest between two indexes; of equals the one with the smaller id. */
    public Optional<PlayerPath> mostlyGuardOf(PlayerPath attacker, int from, int to) {
        int a = attackers.indexOf(attacker);
        int[] counts = new int[defenders.size()];
        for (int s = step(from); s <= step(to); s++) {
            if (guard[s][a] >= 0) {
                counts[guard[s][a]]++;
            }
        }
        int best = -1;
        for (int d = 0; d < counts.length; d++) {
            if (counts[d] > 0 && (best < 0 || counts[d] > counts[best])) {
                best = d;
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(defenders.get(best));
    }

    /** Share of the steps between two indexes in which a defender guards an attacker, 0 to 1. */
    public double share(PlayerPath attacker, PlayerPath defender, int from, int to) {
        int a = attackers.indexOf(attacker);
        int d = defenders.indexOf(defender);
        int count = 0;
        int steps = 0;
        for (int s = step(from); s <= step(to); s++) {
            steps++;
            if (guard[s][a] == d) {
                count++;
            }
        }
        return count / (double) steps;
    }

    private int step(int i) {
        return Math.max(0, Math.min(guard.length - 1, (i + STEP_TICKS / 2) / STEP_TICKS));
    }
}
