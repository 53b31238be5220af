package floorgauge.events.pass;

import floorgauge.events.control.TrackedControl;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.BallPath;
import floorgauge.events.play.Play;
import floorgauge.events.standards.Setting;
import floorgauge.events.view.PlayView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads passes, handoffs, shots and turnovers from the spans of control. */
public final class BallEvents {

    private static final int SHOT_SPAN_TICKS = UniformClock.ticks(1.6);
    private static final double HANDOFF_FLIGHT_SECONDS = 0.24;
    private static final double LEAST_SHOT_SPEED = 1.5;
    private static final double AT_RIM_METRES = 1.2;

    private final PlayView view;
    private final Play play;

    private BallEvents(PlayView view) {
        this.view = view;
        this.play = view.play();
    }

    /** In order of time; empty where the ball was not tracked. */
    public static List<BallEvent> of(PlayView view) {
        return view.control() instanceof TrackedControl control
                ? new BallEvents(view).read(control.spans())
                : List.of();
    }

    private List<BallEvent> read(List<TrackedControl.Span> spans) {
        List<BallEvent> events = new ArrayList<>();
        for (int k = 0; k < spans.size(); k++) {
            TrackedControl.Span span = spans.get(k);
            if (!play.attackers().contains(span.player())) {
                continue;
            }
            Optional<TrackedControl.Span> next =
                    k + 1 < spans.size() ? Optional.of(spans.get(k + 1)) : Optional.empty();
            int limit = next.map(TrackedControl.Span::from).orElse(play.size() - 1);
            int atRim = shotAtRim(span, limit);
            if (atRim < 0 && next.isEmpty()) {
                atRim = onItsWay(span);
            }
            if (atRim >= 0) {
                events.add(new BallEvent(
                        BallEvent.Kind.SHOT, span.player(), Optional.empty(), span.to(), atRim, span.from()));
            } else {
                attackersAgain(spans, k + 1)
                        .or(() -> next)
                        .flatMap(n -> between(span, n))
                        .filter(e -> e.kind() != BallEvent.Kind.TURNOVER || !endsWithShot(events))
                        .ifPresent(events::add);
            }
        }
        return events;
    }

    /**
     * The next control by an attacker, at or after one: a turnover ends the possession, so a defender after whom the attack has
     * the ball again has only touched it.
     */
    private Optional<TrackedControl.Span> attackersAgain(List<TrackedControl.Span> spans, int from) {
        return spans.subList(Math.min(from, spans.size()), spans.size()).stream()
                .filter(s -> play.attackers().contains(s.player()))
                .findFirst();
    }

    /** After a shot the ball is loose: who stands beside it for a moment and then does not, loses nothing. */
    private static boolean endsWithShot(List<BallEvent> events) {
        return !events.isEmpty() && events.get(events.size() - 1).kind() == BallEvent.Kind.SHOT;
    }

    /** When the ball, having risen above the shot's height, comes to the rim; -1 where it does not. */
    private int shotAtRim(TrackedControl.Span span, int limit) {
        BallPath ball = play.ball().orElseThrow();
        boolean high = false;
        for (int i = span.to(); i <= Math.min(limit, span.to() + SHOT_SPAN_TICKS); i++) {
            if (!ball.seen(i)) {
                continue;
            }
            high |= ball.height(i) > view.standards().of(Setting.SHOT_HEIGHT);
            if (high && play.geometry().rimDistance(ball.x(i), ball.y(i)) < AT_RIM_METRES) {
                return i;
            }
        }
        return -1;
    }

    /** When a ball that nobody has any more was last seen high and on its way to the rim; -1 where it was not. */
    private int onItsWay(TrackedControl.Span span) {
        BallPath ball = play.ball().orElseThrow();
        int last = -1;
        for (int i = span.to(); i < Math.min(play.size(), span.to() + SHOT_SPAN_TICKS); i++) {
            boolean high = ball.seen(i) && ball.height(i) > view.standards().of(Setting.SHOT_HEIGHT);
            if (high && towardRim(ball, i)) {
                last = i;
            }
        }
        return last;
    }

    /** Whether the ball's line leads by the rim. */
    private boolean towardRim(BallPath ball, int i) {
        double dx = play.geometry().rimX() - ball.x(i);
        double dy = -ball.y(i);
        double speed = Math.hypot(ball.vx(i), ball.vy(i));
        double across = Math.abs(ball.vx(i) * dy - ball.vy(i) * dx) / Math.max(1e-9, speed);
        return ball.vx(i) * dx + ball.vy(i) * dy > 0 && speed > LEAST_SHOT_SPEED && across < AT_RIM_METRES;
    }

    private Optional<BallEvent> between(TrackedControl.Span a, TrackedControl.Span b) {
        double flight = (b.from() - a.to()) / (double) UniformClock.RATE_HERTZ;
        if (flight > view.standards().of(Setting.PASS_FLIGHT_TIME) || a.player() == b.player()) {
            return Optional.empty();
        }
        if (!play.attackers().contains(b.player())) {
            return Optional.of(event(BallEvent.Kind.TURNOVER, a, b));
        }
        boolean near = a.player().seen(a.to())
                && b.player().seen(a.to())
                && a.player().distanceTo(b.player(), a.to()) <= view.standards().of(Setting.PASS_HANDOFF_DISTANCE);
        return Optional.of(
                event(near && flight <= HANDOFF_FLIGHT_SECONDS ? BallEvent.Kind.HANDOFF : BallEvent.Kind.PASS, a, b));
    }

    private static BallEvent event(BallEvent.Kind kind, TrackedControl.Span a, TrackedControl.Span b) {
        return new BallEvent(kind, a.player(), Optional.of(b.player()), a.to(), b.from(), a.from());
    }
}
