package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.AttackGeometry;
import floorgauge.events.play.BallPath;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;

/**
 * Names a screen from where its user comes from and goes, and says what came of it. In the attack frame a larger x is nearer
 * to the baseline.
 */
final class ScreenKinds {

    private static final int SPAN_TICKS = UniformClock.ticks(1.0);
    private static final double HAS_BALL = 0.5;
    private static final double OUTSIDE_METRES = 4.0;
    private static final double ELBOW_METRES = 2.2;
    private static final double MOVED_METRES = 1.0;
    private static final double AWAY_METRES = 1.5;
    private static final double LOW_METRES = 3.0;
    private static final double WING_METRES = 5.5;
    private static final double HALF_COURT_METRES = 1.5;
    private static final double TURNED_RADIANS = Math.toRadians(110);
    private static final double SLIP_SPEED = 2.0;

    private final PlayView view;
    private final Play play;

    ScreenKinds(PlayView view) {
        this.view = view;
        this.play = view.play();
    }

    ScreenKind kind(ScreenCandidate c, int moment) {
        int from = firstSeen(c.user(), c.pass() - SPAN_TICKS, c.pass());
        int to = lastSeen(c.user(), c.pass() + SPAN_TICKS, c.pass());
        if (hasBall(c.user(), Math.min(moment, c.pass()))) {
            return soonAfterHalfCourt(c.user(), c.pass()) ? ScreenKind.DRAG : ScreenKind.BALL;
        }
        return offBall(c.user(), c.screener(), from, to, c.pass());
    }

    /** Whether the ball, or the user where it was not seen, was still at or behind half court within the drag time. */
    private boolean soonAfterHalfCourt(PlayerPath user, int pass) {
        int since = pass - UniformClock.ticks(view.standards().of(Setting.SCREEN_DRAG_TIME));
        for (int i = pass; i >= Math.max(0, since); i--) {
            int k = i;
            double x = play.ball().filter(b -> b.seen(k)).map(b -> b.x(k)).orElse(user.seen(i) ? user.x(i) : 10);
            if (x < HALF_COURT_METRES) {
                return true;
            }
        }
        return false;
    }

    private boolean hasBall(PlayerPath user, int at) {
        return view.control().probability(user, at) >= HAS_BALL;
    }

    private ScreenKind offBall(PlayerPath user, PlayerPath screener, int from, int to, int pass) {
        AttackGeometry g = play.geometry();
        double rimFrom = g.rimDistance(user.x(from), user.y(from));
        double rimTo = g.rimDistance(user.x(to), user.y(to));
        double outFrom = g.rimX() - user.x(from);
        double dx = user.x(to) - user.x(from);
        double dy = user.y(to) - user.y(from);
        boolean sides = user.y(from) * user.y(to) < 0;
        boolean low = g.rimDistance(screener.x(pass), screener.y(pass)) < OUTSIDE_METRES
                && outFrom < LOW_METRES
                && g.rimX() - user.x(to) < OUTSIDE_METRES;
        if (low && sides && Math.abs(dy) > Math.abs(dx)) {
            return ScreenKind.CROSS;
        }
        if (Math.min(rimFrom, rimTo) > OUTSIDE_METRES && awayFromBall(user, from, to)) {
            return ScreenKind.FLARE;
        }
        boolean toRim =
                rimFrom - nearestToRim(user, pass, to) > MOVED_METRES && outFrom > LOW_METRES && dx > MOVED_METRES;
        if (toRim) {
            return rimFrom > WING_METRES && nearElbow(user, pass) ? ScreenKind.SHUFFLE : ScreenKind.BACK;
        }
        return -dx > MOVED_METRES ? ScreenKind.DOWN : ScreenKind.OFF_BALL;
    }

    private boolean nearElbow(PlayerPath user, int pass) {
        AttackGeometry g = play.geometry();
        double along = user.x(pass) - g.freeThrowX();
        return Math.hypot(along, Math.abs(user.y(pass)) - g.halfLane()) < ELBOW_METRES;
    }

    private double nearestToRim(PlayerPath user, int from, int to) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = from; i <= to; i++) {
            if (user.seen(i)) {
                least = Math.min(least, play.geometry().rimDistance(user.x(i), user.y(i)));
            }
        }
        return least;
    }

    private boolean awayFromBall(PlayerPath user, int from, int to) {
        if (play.ball().isEmpty()) {
            return false;
        }
        BallPath ball = play.ball().get();
        return ball.seen(from)
                && ball.seen(to)
                && ball.distanceTo(user, to) - ball.distanceTo(user, from) > AWAY_METRES;
    }

    ScreenUse use(ScreenCandidate c, int moment, double contactProbability) {
        PlayerPath u = c.user();
        int before = firstSeen(u, c.pass() - UniformClock.ticks(0.5), c.pass());
        int after = lastSeen(u, c.pass() + UniformClock.ticks(0.5), c.pass());
        double turned = turn(u, before, c.pass(), after);
        boolean wentBy = passesBeyond(c, before, after);
        if (turned > TURNED_RADIANS && !wentBy) {
            return ScreenUse.REJECTED;
        }
        int at = Math.min(moment, c.pass());
        boolean leaves = c.screener().seen(at)
                && c.screener().speed(at) > SLIP_SPEED
                && contactProbability < 0.5
                && towardRim(c.screener(), at);
        return leaves ? ScreenUse.SLIPPED : ScreenUse.USED;
    }

    private boolean towardRim(PlayerPath s, int i) {
        return s.vx(i) * (play.geometry().rimX() - s.x(i)) - s.vy(i) * s.y(i) > 0;
    }

    private static double turn(PlayerPath u, int before, int at, int after) {
        double ax = u.x(at) - u.x(before);
        double ay = u.y(at) - u.y(before);
        double bx = u.x(after) - u.x(at);
        double by = u.y(after) - u.y(at);
        if (Math.hypot(ax, ay) < 0.3 || Math.hypot(bx, by) < 0.3) {
            return 0;
        }
        return Math.abs(Math.IEEEremainder(Math.atan2(by, bx) - Math.atan2(ay, ax), 2 * Math.PI));
    }

    /** Whether U comes out on the other side of S than he went in. */
    private static boolean passesBeyond(ScreenCandidate c, int before, int after) {
        PlayerPath u = c.user();
        PlayerPath s = c.screener();
        if (!s.seen(before) || !s.seen(after)) {
            return true;
        }
        double inX = u.x(before) - s.x(before);
        double inY = u.y(before) - s.y(before);
        double outX = u.x(after) - s.x(after);
        double outY = u.y(after) - s.y(after);
        return inX * outX + inY * outY < 0;
    }

    private static int firstSeen(PlayerPath player, int from, int until) {
        int i = Math.max(from, player.first());
        while (i < until && !player.seen(i)) {
            i++;
        }
        return i;
    }

    private static int lastSeen(PlayerPath player, int from, int until) {
        int i = Math.min(from, player.last());
        while (i > until && !player.seen(i)) {
            i--;
        }
        return i;
    }
}
