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

/**
 * Reads the defence's answer to a ball screen. A switch is told from who guards whom afterwards, blitz, hedge and drop from
 * where E goes, over and under from the side on which D passes S. Each answer gets a weight from how far its measure lies
 * beyond its threshold; the weights are scaled to sum to one.
 */
public final class DefenceReader {

    private static final int AFTER_FROM_TICKS = UniformClock.ticks(0.8);
    private static final int AFTER_TO_TICKS = UniformClock.ticks(2.4);
    private static final int ABOUT_TICKS = UniformClock.ticks(1.0);
    private static final double HEDGE_METRES = 2.0;
    private static final double SHARPNESS_METRES = 0.25;
    private static final double LEAST_WAY_METRES = 0.3;
    private static final double SHARPNESS_SECONDS = 0.12;

    private final PlayView view;
    private final Play play;
    private final Standards standards;

    public DefenceReader(PlayView view) {
        this.view = view;
        this.play = view.play();
        this.standards = view.standards();
    }

    /** The answers with their probabilities; empty for a screen off the ball or one whose screener nobody guards. */
    public Optional<Map<DefenceAnswer, Double>> read(Screen s) {
        if (!s.kind().onBall() || s.screenerDefender().isEmpty()) {
            return Optional.empty();
        }
        PlayerPath e = s.screenerDefender().get();
        int at = Math.max(s.moment(), s.pass());
        Map<DefenceAnswer, Double> weights = new EnumMap<>(DefenceAnswer.class);
        double switched = switched(s, e, at);
        double blitz =
                logistic((blitzSeconds(s, e, at) - standards.of(Setting.DEFENCE_BLITZ_TIME)) / SHARPNESS_SECONDS);
        double hedge = logistic((HEDGE_METRES - nearestBeyond(s, e, at)) / SHARPNESS_METRES);
        double drop = logistic((below(s, e) - standards.of(Setting.DEFENCE_DROP_DISTANCE)) / SHARPNESS_METRES);
        double left = 1;
        weights.put(DefenceAnswer.SWITCH, left * switched);
        left *= 1 - switched;
        weights.put(DefenceAnswer.BLITZ, left * blitz);
        left *= 1 - blitz;
        weights.put(DefenceAnswer.HEDGE, left * hedge);
        left *= 1 - hedge;
        weights.put(DefenceAnswer.DROP, left * drop);
        left *= 1 - drop;
        weights.put(DefenceAnswer.OVER, left * over(s));
        weights.put(DefenceAnswer.UNDER, left * (1 - over(s)));
        return Optional.of(weights);
    }

    /** The likeliest answer. */
    public Optional<DefenceAnswer> likeliest(Screen s) {
        return read(s).map(w -> w.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey());
    }

    /** That D went by on U's side of S: his distance from the line through S along U's way, where he is level with S. */
    private double over(Screen s) {
        PlayerPath u = s.user();
        int from = play.clamp(s.pass() - ABOUT_TICKS / 2);
        int to = play.clamp(s.pass() + ABOUT_TICKS / 2);
        if (!u.seen(from) || !u.seen(to) || !s.screener().seen(s.pass())) {
            return 0.5;
        }
        double wx = u.x(to) - u.x(from);
        double wy = u.y(to) - u.y(from);
        double way = Math.hypot(wx, wy);
        if (way < LEAST_WAY_METRES) {
            return 0.5;
        }
        double userSide = wx * (u.y(s.pass()) - s.screener().y(s.pass()))
                - wy * (u.x(s.pass()) - s.screener().x(s.pass()));
        int level = level(s, wx, wy);
        PlayerPath d = s.userDefender();
        if (level < 0) {
            return 0.5;
        }
        double side = (wx * (d.y(level) - s.screener().y(level))
                        - wy * (d.x(level) - s.screener().x(level)))
                / way;
        return logistic(Math.signum(userSide) * side / SHARPNESS_METRES);
    }

    /** When D is level with S along U's way: he comes from behind; the last instant seen where he never does; -1 if never seen. */
    private int level(Screen s, double wx, double wy) {
        PlayerPath d = s.userDefender();
        int last = -1;
        for (int i = play.clamp(s.pass() - ABOUT_TICKS / 2); i <= play.clamp(s.pass() + AFTER_TO_TICKS); i++) {
            if (!d.seen(i) || !s.screener().seen(i)) {
                continue;
            }
            last = i;
            double along = wx * (d.x(i) - s.screener().x(i))
                    + wy * (d.y(i) - s.screener().y(i));
            if (along >= 0) {
                return i;
            }
        }
        return last;
    }

    private double switched(Screen s, PlayerPath e, int at) {
        int from = play.clamp(at + AFTER_FROM_TICKS);
        int to = play.clamp(at + AFTER_TO_TICKS);
        double handler = view.matchups().share(s.user(), e, from, to);
        double screener = view.matchups().share(s.screener(), s.userDefender(), from, to);
        return logistic((Math.min(handler, screener) - 0.6) / 0.1);
    }

    private double blitzSeconds(Screen s, PlayerPath e, int at) {
        double near = standards.of(Setting.DEFENCE_BLITZ_DISTANCE);
        int longest = 0;
        int run = 0;
        for (int i = play.clamp(s.pass() - ABOUT_TICKS / 2); i <= play.clamp(at + AFTER_TO_TICKS); i++) {
            boolean both = s.user().seen(i)
                    && e.seen(i)
                    && s.userDefender().seen(i)
                    && e.distanceTo(s.user(), i) <= near
                    && s.userDefender().distanceTo(s.user(), i) <= near;
            run = both ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return longest / (double) UniformClock.RATE_HERTZ;
    }

    /** E's least distance to U while he is out beyond S, metres; large where he never is. */
    private double nearestBeyond(Screen s, PlayerPath e, int at) {
        double least = 10;
        for (int i = play.clamp(s.pass() - ABOUT_TICKS / 2); i <= play.clamp(at + ABOUT_TICKS); i++) {
            if (!e.seen(i) || !s.screener().seen(i) || !s.user().seen(i)) {
                continue;
            }
            if (rim(e, i) > rim(s.screener(), i) - 0.3) {
                least = Math.min(least, e.distanceTo(s.user(), i));
            }
        }
        return least;
    }

    /** How far E is nearer to the rim than S at the screen, metres. */
    private double below(Screen s, PlayerPath e) {
        int i = s.pass();
        return e.seen(i) && s.screener().seen(i) ? rim(s.screener(), i) - rim(e, i) : 0;
    }

    private double rim(PlayerPath p, int i) {
        return play.geometry().rimDistance(p.x(i), p.y(i));
    }

    private static double logistic(double value) {
        return 1 / (1 + Math.exp(-value));
    }
}
