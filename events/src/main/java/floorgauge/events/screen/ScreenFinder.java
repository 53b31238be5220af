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
 * Finds where a user passes a possible screener: they are within the candidate distance, the user moves at the user speed, or
 * half of it with the ball, is the faster of the two, and has a defender near beforehand.
 */
final class ScreenFinder {

    private static final int NEIGHBOURHOOD_TICKS = UniformClock.ticks(0.6);
    private static final int KEEPS_TICKS = UniformClock.ticks(0.5);
    private static final int PAUSE_TICKS = UniformClock.ticks(0.4);
    private static final int BEFORE_TICKS = UniformClock.ticks(1.0);
    private static final int LONG_BEFORE_TICKS = UniformClock.ticks(3.5);
    private static final int SHORTLY_BEFORE_TICKS = UniformClock.ticks(0.4);
    private static final double HAS_BALL = 0.5;
    /** Farther than the candidate distance by the errors of positions: how surely they were nearer is part of the likelihood. */
    private static final double BEYOND_METRES = 0.5;

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

    /**
     * For each run of the user near the screener, the index at which they are nearest: the two may be near each other for seconds, a
     * screener may wait beside a user who stands, and only what happens when he goes counts. A pause is shorter than a stop.
     */
    private List<Integer> passes(PlayerPath screener, PlayerPath user) {
        double most = view.standards().of(Setting.SCREEN_CANDIDATE_DISTANCE) + BEYOND_METRES;
        List<Integer> passes = new ArrayList<>();
        int best = -1;
        int stood = 0;
        for (int i = Math.max(0, play.coreFrom() - NEIGHBOURHOOD_TICKS); i < play.size(); i++) {
            boolean near = near(screener, user, i, most);
            if (near && user.speed(i) >= leastSpeed(user, i)) {
                stood = 0;
                best = best < 0 || screener.distanceTo(user, i) < screener.distanceTo(user, best) ? i : best;
            } else {
                stood++;
            }
            if (best >= 0 && (!near || stood > PAUSE_TICKS || i == play.size() - 1)) {
                if (play.inCore(best)) {
                    passes.add(best);
                }
                best = -1;
            }
        }
        return passes;
    }

    private static boolean near(PlayerPath a, PlayerPath b, int i, double most) {
        return a.seen(i) && b.seen(i) && a.distanceTo(b, i) <= most;
    }

    private double leastSpeed(PlayerPath user, int i) {
        double least = view.standards().of(Setting.SCREEN_USER_SPEED);
        boolean hasBall = view.control().ballSeen() && view.control().probability(user, i) >= HAS_BALL;
        return hasBall ? least / 2 : least;
    }

    private Optional<ScreenCandidate> candidate(PlayerPath screener, PlayerPath user, int pass) {
        int from = play.clamp(pass - LONG_BEFORE_TICKS);
        int to = play.clamp(pass - SHORTLY_BEFORE_TICKS);
        Optional<PlayerPath> defender = view.matchups().mostlyGuardOf(user, from, to);
        if (defender.isEmpty() || !near(user, defender.get(), pass)) {
            return Optional.empty();
        }
        if (keepsBall(screener, pass)) {
            return Optional.empty();
        }
        Optional<PlayerPath> other =
                view.matchups().mostlyGuardOf(screener, from, to).filter(e -> e != defender.get());
        return Optional.of(new ScreenCandidate(screener, user, defender.get(), other, pass));
    }

    /** Who dribbles by a team-mate screens for nobody; who hands the ball over has it no more once the other has gone by. */
    private boolean keepsBall(PlayerPath screener, int pass) {
        int after = Math.min(play.size() - 1, pass + KEEPS_TICKS);
        return view.control().ballSeen()
                && view.control().probability(screener, pass) >= HAS_BALL
                && view.control().probability(screener, after) >= HAS_BALL;
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
