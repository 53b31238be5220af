package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds where a user passes a possible screener: their distance is least and at most the candidate distance, the user moves
 * at the user speed or has the ball, is the faster of the two, and has a defender near beforehand.
 */
final class ScreenFinder {

    private static final int NEIGHBOURHOOD_TICKS = UniformClock.ticks(0.6);
    private static final int AROUND_TICKS = UniformClock.ticks(0.4);
    private static final int BEFORE_TICKS = UniformClock.ticks(1.0);
    private static final double HAS_BALL = 0.5;

    private final PlayView view;
    private final Play play;

    ScreenFinder(PlayView view) {
        this.view = view;
        this.play = view.play();
    }

    List<ScreenCandidate> find() {
        List<ScreenCandidate> found = new ArrayList<>();
        for (PlayerPath screener : play.attackers()) {
            for (PlayerPath user : play.attackers()) {
                if (screener != user) {
                    passes(screener, user).stream()
                            .map(i -> candidate(screener, user, i))
                            .flatMap(Optional::stream)
                            .forEach(found::add);
                }
            }
        }
        return found;
    }

    /** Indexes at which the distance of the two is least in its neighbourhood and small enough. */
    private List<Integer> passes(PlayerPath a, PlayerPath b) {
        double most = view.standards().of(Setting.SCREEN_CANDIDATE_DISTANCE);
        List<Integer> minima = new ArrayList<>();
        for (int i = play.coreFrom(); i < play.coreTo(); i++) {
            if (a.seen(i) && b.seen(i) && a.distanceTo(b, i) <= most && isLeast(a, b, i)) {
                minima.add(i);
            }
        }
        return minima;
    }

    private boolean isLeast(PlayerPath a, PlayerPath b, int i) {
        double here = a.distanceTo(b, i);
        for (int k = i - NEIGHBOURHOOD_TICKS; k <= i + NEIGHBOURHOOD_TICKS; k++) {
            if (k == i || !a.seen(k) || !b.seen(k)) {
                continue;
            }
            double there = a.distanceTo(b, k);
            if (there < here || (there == here && k < i)) {
                return false;
            }
        }
        return true;
    }

    private Optional<ScreenCandidate> candidate(PlayerPath screener, PlayerPath user, int pass) {
        if (meanSpeed(screener, pass) >= meanSpeed(user, pass) || !moves(user, pass)) {
            return Optional.empty();
        }
        int before = play.clamp(pass - BEFORE_TICKS);
        Optional<PlayerPath> defender =
                view.matchups().guardOf(user, before).or(() -> view.matchups().guardOf(user, pass));
        if (defender.isEmpty() || !near(user, defender.get(), pass)) {
            return Optional.empty();
        }
        Optional<PlayerPath> other = view.matchups()
                .guardOf(screener, before)
                .or(() -> view.matchups().guardOf(screener, pass))
                .filter(e -> e != defender.get());
        return Optional.of(new ScreenCandidate(screener, user, defender.get(), other, pass));
    }

    private static double meanSpeed(PlayerPath player, int pass) {
        double sum = 0;
        int count = 0;
        for (int i = pass - AROUND_TICKS; i <= pass + AROUND_TICKS / 4; i++) {
            if (player.seen(i)) {
                sum += player.speed(i);
                count++;
            }
        }
        return count == 0 ? 0 : sum / count;
    }

    private boolean moves(PlayerPath user, int pass) {
        double least = view.standards().of(Setting.SCREEN_USER_SPEED);
        for (int i = pass - AROUND_TICKS; i <= pass + AROUND_TICKS; i++) {
            if (user.seen(i) && user.speed(i) >= least) {
                return true;
            }
        }
        return view.control().probability(user, pass) >= HAS_BALL
                && view.control().ballSeen();
    }

    private boolean near(PlayerPath user, PlayerPath defender, int pass) {
        double most = view.standards().of(Setting.SCREEN_DEFENDER_DISTANCE);
        for (int i = pass - BEFORE_TICKS; i <= pass; i++) {
            if (user.seen(i) && defender.seen(i) && user.distanceTo(defender, i) <= most) {
                return true;
            }
        }
        return false;
    }
}
