package floorgauge.events.play;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Team;
import java.util.Arrays;
import java.util.List;

/**
 * Log-likelihoods of the four attacks at one tick, from where everyone stands and, if it was seen, who has the ball.
 *
 * <p>Three facts of the trade are used (common practice): play gathers at the end under attack; defenders stand between
 * their man and the rim, so that, ranked by distance to the rim, each attacker is about a metre farther than the defender of
 * his rank; the team with the ball attacks. Neighbouring ticks say nearly the same, so one second of play counts as one
 * observation.
 */
final class AttackEvidence {

    private static final double GATHER_METRES = 7;
    private static final double GATHER_DEVIATION = 5;
    private static final double GOAL_SIDE_METRES = 0.9;
    private static final double GOAL_SIDE_DEVIATION = 1.1;
    private static final double ALONE = 2;
    private static final double HELD_BALL = 3;
    private static final double NEAR_BALL = 0.7;
    private static final double REACH_METRES = 2;
    private static final double MOST_SCORE_METRES = 2;
    private static final double BALL_REACH_METRES = 1.3;
    private static final double SECONDS_A_TICK = 0.04;

    private final RuleSet rules;

    AttackEvidence(RuleSet rules) {
        this.rules = rules;
    }

    double[] logLikelihoods(FloorTick tick) {
        double[] sums = new double[Attack.values().length];
        double meanX = tick.players().stream()
                .filter(p -> isPlayer(p.team()))
                .mapToDouble(p -> p.motion().x())
                .average()
                .orElse(0);
        double gather = Math.max(-GATHER_METRES, Math.min(GATHER_METRES, meanX))
                * GATHER_METRES
                / (GATHER_DEVIATION * GATHER_DEVIATION);
        Team withBall = withBall(tick);
        double ball = tick.ball().map(b -> b.heldBy() > 0).orElse(false) ? HELD_BALL : NEAR_BALL;
        for (Attack attack : Attack.values()) {
            double sum = attack.end().sign() * gather + goalSide(tick, attack);
            if (withBall != Team.UNKNOWN) {
                sum += withBall == attack.team() ? ball : -ball;
            }
            sums[attack.ordinal()] = sum * SECONDS_A_TICK;
        }
        return sums;
    }

    private double goalSide(FloorTick tick, Attack attack) {
        FloorPoint rim = rules.rim(attack.end());
        double[] attackers = distances(tick.players(), attack.team(), rim);
        double[] defenders = distances(tick.players(), attack.defence(), rim);
        int pairs = Math.min(attackers.length, defenders.length);
        if (pairs == 0) {
            return attackers.length == defenders.length ? 0 : attackers.length > 0 ? ALONE : -ALONE;
        }
        double sum = 0;
        for (int i = 0; i < pairs; i++) {
            sum += attackers[i] - defenders[i];
        }
        double score = Math.max(-MOST_SCORE_METRES, Math.min(MOST_SCORE_METRES, sum / pairs));
        return score * GOAL_SIDE_METRES / (GOAL_SIDE_DEVIATION * GOAL_SIDE_DEVIATION);
    }

    private static double[] distances(List<PlayerTick> players, Team team, FloorPoint rim) {
        double[] distances = players.stream()
                .filter(p -> p.team() == team)
                .mapToDouble(p ->
                        Math.hypot(p.motion().x() - rim.xMetres(), p.motion().y() - rim.yMetres()))
                .toArray();
        Arrays.sort(distances);
        return distances;
    }

    private static Team withBall(FloorTick tick) {
        if (tick.ball().isEmpty()) {
            return Team.UNKNOWN;
        }
        BallTick ball = tick.ball().get();
        PlayerTick best = null;
        double least = ball.heightMetres() > REACH_METRES ? 0 : BALL_REACH_METRES;
        for (PlayerTick player : tick.players()) {
            if (player.trackId() == ball.heldBy()) {
                return isPlayer(player.team()) ? player.team() : Team.UNKNOWN;
            }
            double distance = Math.hypot(
                    player.motion().x() - ball.motion().x(),
                    player.motion().y() - ball.motion().y());
            if (isPlayer(player.team()) && distance < least) {
                least = distance;
                best = player;
            }
        }
        return best == null ? Team.UNKNOWN : best.team();
    }

    static boolean isPlayer(Team team) {
        return team == Team.FIRST || team == Team.SECOND;
    }
}
