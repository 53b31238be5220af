package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.view.PlayView;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads the defence's answer to a ball screen. E comes onto the ball or not. Where he does, D goes to S (a switch), or stays on
 * the ball too, and E recovers to S (a hedge) or stays (a blitz). Where he does not, he is well below S (a drop), or D goes by
 * S on U's side (over) or on the other (under). Each measure weighs by how far it lies beyond its threshold; the weights sum to one.
 */
public final class DefenceReader {

    private static final int BEFORE_TICKS = UniformClock.ticks(0.6);
    private static final int ON_BALL_UNTIL_TICKS = UniformClock.ticks(1.4);
    private static final int ON_BALL_TICKS = UniformClock.ticks(0.4);
    private static final int BELOW_UNTIL_TICKS = UniformClock.ticks(0.8);
    private static final int CHANGED_FROM_TICKS = UniformClock.ticks(1.0);
    private static final int CHANGED_TO_TICKS = UniformClock.ticks(1.8);
    private static final int RECOVERS_FROM_TICKS = UniformClock.ticks(1.2);
    private static final int RECOVERS_TO_TICKS = UniformClock.ticks(2.6);
    private static final int SIDE_TICKS = UniformClock.ticks(0.5);
    private static final double ON_BALL_METRES = 1.1;
    private static final double TAKES_METRES = 1.3;
    private static final double LEFT_METRES = 1.7;
    private static final double RECOVERED_METRES = 2.2;
    private static final double SHARPNESS_METRES = 0.12;
    private static final double WIDE_SHARPNESS_METRES = 0.3;
    private static final double UNSEEN = 0.5;

    private final Play play;
    private final Standards standards;

    public DefenceReader(PlayView view) {
        this.play = view.play();
        this.standards = view.standards();
    }

    /** The answers with their probabilities; empty for a screen off the ball or one whose screener nobody guards. */
    public Optional<Map<DefenceAnswer, Double>> read(Screen s) {
        if (!s.kind().onBall() || s.screenerDefender().isEmpty()) {
            return Optional.empty();
        }
        PlayerPath e = s.screenerDefender().get();
        double near = onBall(s, e);
        double switched = switched(s);
        double onBall = near * (switched + (1 - switched) * leaves(s, e));
        double recovers = recovers(s, e);
        double drop = drop(s, e);
        double over = over(s);
        Map<DefenceAnswer, Double> weights = new EnumMap<>(DefenceAnswer.class);
        weights.put(DefenceAnswer.SWITCH, near * switched);
        weights.put(DefenceAnswer.HEDGE, (onBall - near * switched) * recovers);
        weights.put(DefenceAnswer.BLITZ, (onBall - near * switched) * (1 - recovers));
        weights.put(DefenceAnswer.DROP, (1 - onBall) * drop);
        weights.put(DefenceAnswer.OVER, (1 - onBall) * (1 - drop) * over);
        weights.put(DefenceAnswer.UNDER, (1 - onBall) * (1 - drop) * (1 - over));
        return Optional.of(weights);
    }

    /** The likeliest answer. */
    public Optional<DefenceAnswer> likeliest(Screen s) {
        return read(s).map(w -> w.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey());
    }

    /** When E first stands as near the ball as two who play it stand; empty where he never does. */
    public OptionalInt meetsBall(Screen s) {
        double near = standards.of(Setting.DEFENCE_BLITZ_DISTANCE);
        PlayerPath e = s.screenerDefender().orElseThrow();
        for (int i = from(s); i <= play.clamp(at(s) + ON_BALL_UNTIL_TICKS); i++) {
            if (e.seen(i) && s.user().seen(i) && e.distanceTo(s.user(), i) <= near) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }

    private static int at(Screen s) {
        return Math.max(s.moment(), s.pass());
    }

    private int from(Screen s) {
        return play.clamp(Math.min(s.moment(), s.pass()) - BEFORE_TICKS);
    }

    private double onBall(Screen s, PlayerPath e) {
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = s.pass(); i <= play.clamp(at(s) + ON_BALL_UNTIL_TICKS) - ON_BALL_TICKS; i++) {
            nearest = Math.min(nearest, most(e, s.user(), i, i + ON_BALL_TICKS));
        }
        return logistic((ON_BALL_METRES - nearest) / SHARPNESS_METRES);
    }

    private static double most(PlayerPath a, PlayerPath b, int from, int to) {
        double most = 0;
        for (int i = from; i <= to; i++) {
            most = a.seen(i) && b.seen(i) ? Math.max(most, a.distanceTo(b, i)) : Double.POSITIVE_INFINITY;
        }
        return most;
    }

    /** That E leaves S for the ball: where S and U are close together, he is near both without a step. */
    private double leaves(Screen s, PlayerPath e) {
        double most = 0;
        for (int i = s.pass(); i <= play.clamp(at(s) + ON_BALL_UNTIL_TICKS); i++) {
            if (e.seen(i) && s.screener().seen(i)) {
                most = Math.max(most, e.distanceTo(s.screener(), i));
            }
        }
        return logistic((most - LEFT_METRES) / WIDE_SHARPNESS_METRES);
    }

    /** How near D stays to S once E has the ball. */
    private double switched(Screen s) {
        double sum = 0;
        int count = 0;
        for (int i = at(s) + CHANGED_FROM_TICKS; i <= at(s) + CHANGED_TO_TICKS; i++) {
            if (s.userDefender().seen(i) && s.screener().seen(i)) {
                sum += s.userDefender().distanceTo(s.screener(), i);
                count++;
            }
        }
        return count == 0 ? UNSEEN : logistic((TAKES_METRES - sum / count) / WIDE_SHARPNESS_METRES);
    }

    private double recovers(Screen s, PlayerPath e) {
        double least =
                least(e, s.screener(), play.clamp(at(s) + RECOVERS_FROM_TICKS), play.clamp(at(s) + RECOVERS_TO_TICKS));
        return logistic((RECOVERED_METRES - least) / WIDE_SHARPNESS_METRES);
    }

    /** How far E is nearer to the rim than S about the screen, metres, beyond the drop distance. */
    private double drop(Screen s, PlayerPath e) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = s.pass(); i <= play.clamp(at(s) + BELOW_UNTIL_TICKS); i++) {
            if (e.seen(i) && s.screener().seen(i)) {
                most = Math.max(most, rim(s.screener(), i) - rim(e, i));
            }
        }
        return logistic((most - standards.of(Setting.DEFENCE_DROP_DISTANCE)) / WIDE_SHARPNESS_METRES);
    }

    /** On which side of S D goes by, along the line from S to U at the pass: U's side is over. */
    private double over(Screen s) {
        PlayerPath screener = s.screener();
        double ux = s.user().x(s.pass()) - screener.x(s.pass());
        double uy = s.user().y(s.pass()) - screener.y(s.pass());
        double length = Math.max(1e-6, Math.hypot(ux, uy));
        double sum = 0;
        int count = 0;
        PlayerPath d = s.userDefender();
        for (int i = s.pass(); i <= play.clamp(s.pass() + SIDE_TICKS); i++) {
            if (d.seen(i) && screener.seen(i)) {
                sum += ((d.x(i) - screener.x(i)) * ux + (d.y(i) - screener.y(i)) * uy) / length;
                count++;
            }
        }
        return count == 0 ? UNSEEN : logistic(sum / count / WIDE_SHARPNESS_METRES);
    }

    private static double least(PlayerPath a, PlayerPath b, int from, int to) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = from; i <= to; i++) {
            if (a.seen(i) && b.seen(i)) {
                least = Math.min(least, a.distanceTo(b, i));
            }
        }
        return least;
    }

    private double rim(PlayerPath p, int i) {
        return play.geometry().rimDistance(p.x(i), p.y(i));
    }

    private static double logistic(double value) {
        return 1 / (1 + Math.exp(-value));
    }
}
