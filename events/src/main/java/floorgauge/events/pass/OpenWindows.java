package floorgauge.events.pass;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.AttackGeometry;
import floorgauge.events.play.BallPath;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.view.PlayView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds open windows. A receiver is open where no defender is within the open distance, no defender can reach the straight
 * pass before the ball, and he is a threat: inside the arc and moving to the rim, or within shooting range.
 *
 * <p>A defender at distance h from a point of the pass reaches it after reaction + (h - reach) / speed; the ball is there
 * after its way over the pass speed. Every tenth of a metre is looked at.
 */
public final class OpenWindows {

    private static final double TO_RIM_SPEED = 1.0;
    private static final double STEP_METRES = 0.1;
    private static final double OWN_METRES = 0.5;
    private static final double LEAST_ERROR_SECONDS = 0.02;
    private static final double MOST_ERROR_SECONDS = 0.3;

    private final Play play;
    private final Standards standards;
    private final PlayView view;

    public OpenWindows(PlayView view) {
        this.view = view;
        this.play = view.play();
        this.standards = view.standards();
    }

    /** In order of opening; empty where the ball was not tracked. */
    public List<OpenWindow> find() {
        List<OpenWindow> windows = new ArrayList<>();
        if (!view.control().ballSeen()) {
            return windows;
        }
        for (PlayerPath receiver : play.attackers()) {
            find(receiver, windows);
        }
        windows.sort(java.util.Comparator.comparingInt(OpenWindow::open)
                .thenComparingInt(w -> w.receiver().trackId()));
        return windows;
    }

    private void find(PlayerPath receiver, List<OpenWindow> windows) {
        int least = UniformClock.ticks(standards.of(Setting.WINDOW_TIME));
        int i = 0;
        while (i < play.size()) {
            Optional<PlayerPath> passer = passer(i, receiver);
            if (passer.isEmpty() || !isOpen(receiver, passer.get(), i)) {
                i++;
                continue;
            }
            int end = i;
            while (end + 1 < play.size()
                    && passer(end + 1, receiver).equals(passer)
                    && isOpen(receiver, passer.get(), end + 1)) {
                end++;
            }
            if (end - i + 1 >= least && play.inCore(i)) {
                windows.add(window(receiver, passer.get(), i, end));
            }
            i = end + 1;
        }
    }

    private Optional<PlayerPath> passer(int i, PlayerPath receiver) {
        return view.control()
                .controller(i)
                .filter(p -> p != receiver
                        && p.seen(i)
                        && receiver.seen(i)
                        && play.attackers().contains(p));
    }

    private OpenWindow window(PlayerPath receiver, PlayerPath passer, int open, int close) {
        boolean covered =
                open > 0 && receiver.seen(open - 1) && passer.seen(open - 1) && !isOpen(receiver, passer, open - 1);
        double before = open > 0 && receiver.seen(open - 1) ? nearest(receiver, open - 1) : nearest(receiver, open);
        double rate = Math.abs(nearest(receiver, open) - before) * UniformClock.RATE_HERTZ;
        double error = receiver.covariance(open).standardErrorMetres() * Math.sqrt(2) / Math.max(0.5, rate);
        return new OpenWindow(
                passer,
                receiver,
                open,
                close,
                Math.max(LEAST_ERROR_SECONDS, Math.min(MOST_ERROR_SECONDS, error)),
                nearest(receiver, open),
                covered);
    }

    /** From a player to the nearest defender, metres; infinite without one in sight. */
    double nearest(PlayerPath player, int i) {
        double least = Double.POSITIVE_INFINITY;
        for (PlayerPath defender : play.defenders()) {
            if (defender.seen(i)) {
                least = Math.min(least, defender.distanceTo(player, i));
            }
        }
        return least;
    }

    /** Whether a receiver is open to a passer, where both are seen. */
    boolean isOpen(PlayerPath receiver, PlayerPath passer, int i) {
        double nearest = nearest(receiver, i);
        return !Double.isInfinite(nearest)
                && nearest >= standards.of(Setting.WINDOW_OPEN_DISTANCE)
                && isThreat(receiver, i)
                && laneIsClear(receiver, passer, i);
    }

    private boolean isThreat(PlayerPath receiver, int i) {
        AttackGeometry g = play.geometry();
        double distance = g.rimDistance(receiver.x(i), receiver.y(i));
        double toRim = distance > 1e-6
                ? (receiver.vx(i) * (g.rimX() - receiver.x(i)) - receiver.vy(i) * receiver.y(i)) / distance
                : 0;
        return (g.insideArc(receiver.x(i), receiver.y(i)) && toRim > TO_RIM_SPEED)
                || distance <= standards.of(Setting.WINDOW_SHOOTING_RANGE);
    }

    private boolean laneIsClear(PlayerPath receiver, PlayerPath passer, int i) {
        Optional<BallPath> ball = play.ball().filter(b -> b.seen(i));
        double ax = ball.map(b -> b.x(i)).orElse(passer.x(i));
        double ay = ball.map(b -> b.y(i)).orElse(passer.y(i));
        double dx = receiver.x(i) - ax;
        double dy = receiver.y(i) - ay;
        double length = Math.hypot(dx, dy);
        for (PlayerPath defender : play.defenders()) {
            if (defender.seen(i) && reaches(defender, i, ax, ay, dx, dy, length)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a defender is at some point of the pass before the ball; not on its first half metre, which is the passer's. */
    private boolean reaches(PlayerPath defender, int i, double ax, double ay, double dx, double dy, double length) {
        double reach = standards.of(Setting.WINDOW_DEFENDER_REACH);
        double reaction = standards.of(Setting.WINDOW_REACTION_TIME);
        double speed = standards.of(Setting.WINDOW_DEFENDER_SPEED);
        double ballSpeed = standards.of(Setting.PASS_SPEED);
        int points = Math.max(2, (int) Math.ceil(length / STEP_METRES));
        for (int k = 0; k <= points; k++) {
            double share = (double) k / points;
            if (share * length <= OWN_METRES) {
                continue;
            }
            double run = Math.max(0, defender.distanceTo(ax + share * dx, ay + share * dy, i) - reach);
            if ((run == 0 ? 0 : reaction + run / speed) <= share * length / ballSpeed) {
                return true;
            }
        }
        return false;
    }
}
