package floorgauge.events.diagram;

import java.util.List;

/** Moves marks apart that would overlap, defenders more than attackers, none far. */
final class DotRelaxer {

    private static final int ROUNDS = 60;
    private static final double GAP = 0.3;
    private static final double MOST = 3.2;
    private static final double ATTACKER_SHARE = 0.2;

    private DotRelaxer() {}

    /** Changes the places of the marks given. Their order decides where two lie on one point. */
    static void relax(List<PlayerDot> dots) {
        double[][] home = dots.stream().map(d -> d.at().clone()).toArray(double[][]::new);
        for (int round = 0; round < ROUNDS; round++) {
            boolean moved = false;
            for (int i = 0; i < dots.size(); i++) {
                for (int j = i + 1; j < dots.size(); j++) {
                    moved |= apart(dots.get(i), dots.get(j));
                }
            }
            for (int i = 0; i < dots.size(); i++) {
                hold(dots.get(i).at(), home[i]);
            }
            if (!moved) {
                return;
            }
        }
    }

    private static boolean apart(PlayerDot a, PlayerDot b) {
        double wanted = a.radius() + b.radius() + GAP;
        double d = Polyline.distance(a.at(), b.at());
        if (d >= wanted) {
            return false;
        }
        double[] u = Polyline.unit(a.at(), b.at());
        double push = wanted - d;
        double shareA = a.attacking() == b.attacking() ? 0.5 : a.attacking() ? ATTACKER_SHARE : 1 - ATTACKER_SHARE;
        a.at()[0] -= u[0] * push * shareA;
        a.at()[1] -= u[1] * push * shareA;
        b.at()[0] += u[0] * push * (1 - shareA);
        b.at()[1] += u[1] * push * (1 - shareA);
        return push > 0.05;
    }

    private static void hold(double[] at, double[] home) {
        double d = Polyline.distance(at, home);
        if (d > MOST) {
            at[0] = home[0] + (at[0] - home[0]) * MOST / d;
            at[1] = home[1] + (at[1] - home[1]) * MOST / d;
        }
    }
}
