package floorgauge.events.control;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.BallPath;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Control from the ball's track. A player has the ball from when it is in his hands, or within the control distance for the
 * control time, until it leaves the release distance or another has it; a ball above his reach is nobody's. The end of a
 * control is put back to the moment at which the ball began to leave: the last at which it was in his hands or within the
 * control distance.
 */
public final class TrackedControl implements BallControl {

    private static final double REACH_METRES = 2.6;
    private static final double FLIES_BY_SPEED = 4;
    private static final int LOOK_AHEAD_TICKS = UniformClock.ticks(0.08);
    private static final double DRIBBLE_METRES = 1.3;
    private static final double CERTAIN = 0.98;

    /** A span of control. */
    public record Span(PlayerPath player, int from, int to) {}

    private final PlayerPath[] controller;
    private final boolean[] seen;
    private final List<Span> spans = new ArrayList<>();

    public TrackedControl(Play play, Standards standards) {
        BallPath ball = play.ball().orElseThrow(() -> new IllegalArgumentException("the ball was not seen"));
        this.controller = new PlayerPath[play.size()];
        this.seen = new boolean[play.size()];
        List<PlayerPath> players = new ArrayList<>(play.attackers());
        players.addAll(play.defenders());
        follow(play, ball, players, standards);
        bridge(UniformClock.ticks(0.2));
        dropShort(Math.max(1, UniformClock.ticks(standards.of(Setting.CONTROL_TIME))));
        collectSpans();
    }

    private void follow(Play play, BallPath ball, List<PlayerPath> players, Standards standards) {
        double near = standards.of(Setting.CONTROL_DISTANCE);
        double far = standards.of(Setting.CONTROL_RELEASE_DISTANCE);
        PlayerPath current = null;
        int lastWithin = -1;
        for (int i = 0; i < play.size(); i++) {
            seen[i] = ball.seen(i);
            if (!ball.seen(i)) {
                continue;
            }
            Optional<PlayerPath> holder = holder(ball, players, i);
            PlayerPath nearest = nearest(ball, players, i);
            boolean handsKnown = holder.isPresent();
            if (handsKnown) {
                current = holder.get();
                lastWithin = i;
            } else if (current != null && within(ball, current, i, near) && nearest == current) {
                lastWithin = i;
            } else if (current != null && !within(ball, current, i, far)) {
                release(current, lastWithin, i);
                current = null;
            }
            boolean catches = nearest != null && nearest != current && goesAlong(ball, nearest, i);
            if (!handsKnown && catches && within(ball, nearest, i, near)) {
                boolean closer =
                        current == null || ball.distanceTo(nearest, i) < ball.distanceTo(current, i) - (far - near) / 2;
                if (closer) {
                    release(current, lastWithin, i);
                    current = nearest;
                    lastWithin = i;
                }
            }
            controller[i] = current;
        }
    }

    private void release(PlayerPath who, int lastWithin, int before) {
        for (int k = lastWithin + 1; k < before && k >= 0; k++) {
            if (controller[k] == who) {
                controller[k] = null;
            }
        }
    }

    private static Optional<PlayerPath> holder(BallPath ball, List<PlayerPath> players, int i) {
        return players.stream()
                .filter(p -> p.trackId() == ball.heldBy(i) && p.seen(i))
                .findFirst();
    }

    private static PlayerPath nearest(BallPath ball, List<PlayerPath> players, int i) {
        PlayerPath best = null;
        double least = Double.POSITIVE_INFINITY;
        for (PlayerPath player : players) {
            if (player.seen(i) && ball.distanceTo(player, i) < least) {
                least = ball.distanceTo(player, i);
                best = player;
            }
        }
        return best;
    }

    private static boolean within(BallPath ball, PlayerPath player, int i, double distance) {
        return player.seen(i) && ball.distanceTo(player, i) <= distance && !(ball.height(i) > REACH_METRES);
    }

    /** A ball that flies by, rises to the rim or falls from it is not caught: it must go about as the player goes. */
    private static boolean goesAlong(BallPath ball, PlayerPath player, int i) {
        double along = Math.hypot(ball.vx(i) - player.vx(i), ball.vy(i) - player.vy(i));
        double next = ball.seen(i + LOOK_AHEAD_TICKS) && player.seen(i + LOOK_AHEAD_TICKS) ? drift(ball, player, i) : 0;
        return Math.hypot(Math.max(along, next), rise(ball, i)) < FLIES_BY_SPEED;
    }

    /** How quickly the ball leaves its place beside a player over the next instants, m/s. */
    private static double drift(BallPath ball, PlayerPath player, int i) {
        int to = i + LOOK_AHEAD_TICKS;
        double dx = ball.x(to) - player.x(to) - ball.x(i) + player.x(i);
        double dy = ball.y(to) - player.y(to) - ball.y(i) + player.y(i);
        return Math.hypot(dx, dy) * UniformClock.RATE_HERTZ / LOOK_AHEAD_TICKS;
    }

    /** m/s upward about an index, 0 where the height was not seen or the ball is low enough to be a dribble. */
    private static double rise(BallPath ball, int i) {
        int from = ball.seen(i - 1) ? i - 1 : i;
        int to = ball.seen(i + 1) ? i + 1 : i;
        double rise = (ball.height(to) - ball.height(from)) / Math.max(1, to - from) * UniformClock.RATE_HERTZ;
        return Double.isNaN(rise) || ball.height(i) < DRIBBLE_METRES ? 0 : rise;
    }

    /** A short break between two spans of one player is a dribble or a miss of the ball's track. */
    private void bridge(int most) {
        for (int i = 1; i < controller.length; i++) {
            if (controller[i] != null || controller[i - 1] == null) {
                continue;
            }
            int end = i;
            while (end < controller.length && controller[end] == null) {
                end++;
            }
            boolean same = end < controller.length && controller[end] == controller[i - 1];
            if (same && (end - i <= most || !anySeen(i, end))) {
                Arrays.fill(controller, i, end, controller[i - 1]);
            }
        }
    }

    private boolean anySeen(int from, int to) {
        for (int i = from; i < to; i++) {
            if (seen[i]) {
                return true;
            }
        }
        return false;
    }

    private void dropShort(int least) {
        int i = 0;
        while (i < controller.length) {
            int end = i + 1;
            while (end < controller.length && controller[end] == controller[i]) {
                end++;
            }
            boolean whole = i > 0 && end < controller.length;
            if (controller[i] != null && end - i < least && whole) {
                Arrays.fill(controller, i, end, null);
            }
            i = end;
        }
    }

    private void collectSpans() {
        int i = 0;
        while (i < controller.length) {
            int end = i + 1;
            while (end < controller.length && controller[end] == controller[i]) {
                end++;
            }
            if (controller[i] != null) {
                spans.add(new Span(controller[i], i, end - 1));
            }
            i = end;
        }
    }

    /** Every span of control, of either team, in order of time. */
    public List<Span> spans() {
        return Collections.unmodifiableList(spans);
    }

    @Override
    public boolean ballSeen() {
        return true;
    }

    @Override
    public Optional<PlayerPath> controller(int i) {
        return Optional.ofNullable(controller[i]);
    }

    @Override
    public double probability(PlayerPath player, int i) {
        return controller[i] == player ? CERTAIN : 0;
    }
}
