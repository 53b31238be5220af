package floorgauge.events.screen;

import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.view.PlayView;
import java.util.Optional;
import java.util.OptionalDouble;

/** Measures a candidate about its moment t0. */
final class ScreenMeter {

    private static final int MOMENT_BEFORE_TICKS = UniformClock.ticks(0.6);
    private static final int MOMENT_AFTER_TICKS = UniformClock.ticks(1.0);
    private static final int CONTACT_BEFORE_TICKS = UniformClock.ticks(1.0);
    private static final int AT_CONTACT_TICKS = UniformClock.ticks(0.2);
    private static final int LEAD_TICKS = UniformClock.ticks(0.3);
    private static final int SPAN_TICKS = UniformClock.ticks(1.0);
    private static final int RECOVERY_TICKS = UniformClock.ticks(4);
    private static final double PLATEAU_METRES = 0.02;
    private static final double NEVER_NEAR_METRES = 3.0;

    private final PlayView view;
    private final Play play;
    private final Standards standards;
    private final ContactMeter contact;
    private final ScreenKinds kinds;
    private final ScreenLikelihood likelihood;

    ScreenMeter(PlayView view) {
        this.view = view;
        this.play = view.play();
        this.standards = view.standards();
        this.contact = new ContactMeter(standards);
        this.kinds = new ScreenKinds(view);
        this.likelihood = new ScreenLikelihood(view);
    }

    Screen measure(ScreenCandidate c) {
        PlayerPath s = c.screener();
        PlayerPath u = c.user();
        PlayerPath d = c.userDefender();
        int moment = moment(c);
        int from = play.clamp(moment - CONTACT_BEFORE_TICKS);
        int to = play.clamp(moment + UniformClock.ticks(standards.of(Setting.SCREEN_SEPARATION_TIME)));
        double contactProbability = contact.contactProbability(s, d, from, to);
        Estimate before = separation(u, d, play.clamp(moment - LEAD_TICKS), moment);
        int best = widest(u, d, moment, to);
        Optional<Estimate> gained =
                best < 0 ? Optional.empty() : Optional.of(difference(separation(u, d, best, moment), before));
        Estimate speed = meanSpeed(s, moment - AT_CONTACT_TICKS, moment + AT_CONTACT_TICKS);
        double moving = 1 - speed.probabilityAtMost(standards.of(Setting.SCREEN_SET_SPEED));
        Estimate brush = new Estimate(u.distanceTo(s, c.pass()), u.distanceError(s, c.pass()));
        return new Screen(
                s,
                u,
                d,
                c.screenerDefender(),
                c.pass(),
                moment,
                play.clamp(Math.min(moment, c.pass()) - SPAN_TICKS),
                play.clamp(Math.max(moment, c.pass()) + SPAN_TICKS),
                likelihood.of(c, moment),
                kinds.kind(c, moment),
                kinds.use(c, moment, contactProbability),
                gapAt(s, d, moment),
                contactProbability,
                contact.contactSeconds(s, d, from, to),
                speed,
                moving * contactProbability,
                brush,
                before,
                gained,
                best < 0 ? moment : best,
                timeLost(u, d, moment),
                next(s, Math.max(moment, c.pass())),
                new QualityMeter(standards).measure(c, moment, contactProbability, brush, gained));
    }

    /** Of the instants at which D and S are nearest, to two centimetres or their error, the one nearest to the pass. */
    private int moment(ScreenCandidate c) {
        PlayerPath s = c.screener();
        PlayerPath d = c.userDefender();
        int from = play.clamp(c.pass() - MOMENT_BEFORE_TICKS);
        int to = play.clamp(c.pass() + MOMENT_AFTER_TICKS);
        double least = Double.POSITIVE_INFINITY;
        double error = 0;
        for (int i = from; i <= to; i++) {
            if (s.seen(i) && d.seen(i) && s.distanceTo(d, i) < least) {
                least = s.distanceTo(d, i);
                error = s.distanceError(d, i);
            }
        }
        if (least > NEVER_NEAR_METRES) {
            return c.pass();
        }
        int best = c.pass();
        int away = Integer.MAX_VALUE;
        for (int i = from; i <= to; i++) {
            boolean near = s.seen(i) && d.seen(i) && s.distanceTo(d, i) <= least + Math.max(PLATEAU_METRES, error);
            if (near && Math.abs(i - c.pass()) < away) {
                away = Math.abs(i - c.pass());
                best = i;
            }
        }
        return best;
    }

    private static Estimate gapAt(PlayerPath s, PlayerPath d, int i) {
        int seen = i;
        while (seen > 0 && !(s.seen(seen) && d.seen(seen))) {
            seen--;
        }
        return s.seen(seen) && d.seen(seen) ? ContactMeter.gap(s, d, seen) : new Estimate(NEVER_NEAR_METRES, 1);
    }

    private static Estimate separation(PlayerPath u, PlayerPath d, int i, int otherwise) {
        int at = u.seen(i) && d.seen(i) ? i : otherwise;
        return u.seen(at) && d.seen(at)
                ? new Estimate(u.distanceTo(d, at), u.distanceError(d, at))
                : new Estimate(0, 1);
    }

    private static Estimate difference(Estimate a, Estimate b) {
        return new Estimate(a.value() - b.value(), Math.hypot(a.error(), b.error()));
    }

    /** When U and D are farthest apart after the screen; -1 where less than half of that time was seen. */
    private static int widest(PlayerPath u, PlayerPath d, int moment, int to) {
        int best = -1;
        int count = 0;
        for (int i = moment; i <= to; i++) {
            if (u.seen(i) && d.seen(i)) {
                count++;
                if (best < 0 || u.distanceTo(d, i) > u.distanceTo(d, best)) {
                    best = i;
                }
            }
        }
        return count * 2 >= to - moment ? best : -1;
    }

    /**
     * From the screen until D is back within the recovered distance of U; 0 where he never lost him in the separation time;
     * empty where he was not seen to come back within four seconds.
     */
    private OptionalDouble timeLost(PlayerPath u, PlayerPath d, int moment) {
        double back = standards.of(Setting.SCREEN_RECOVERED_DISTANCE);
        int span = UniformClock.ticks(standards.of(Setting.SCREEN_SEPARATION_TIME));
        boolean lost = false;
        for (int i = moment; i <= moment + RECOVERY_TICKS; i++) {
            if (!u.seen(i) || !d.seen(i)) {
                return !lost && i > moment + span ? OptionalDouble.of(0) : OptionalDouble.empty();
            }
            boolean away = u.distanceTo(d, i) > back;
            if (!away && lost) {
                return OptionalDouble.of((i - moment) / (double) UniformClock.RATE_HERTZ);
            }
            if (!away && i > moment + span) {
                return OptionalDouble.of(0);
            }
            lost |= away;
        }
        return OptionalDouble.empty();
    }

    /** Mean speed over neighbouring instants, whose errors go together. */
    static Estimate meanSpeed(PlayerPath s, int from, int to) {
        double sum = 0;
        double errors = 0;
        int count = 0;
        for (int i = from; i <= to; i++) {
            if (s.seen(i)) {
                sum += s.speed(i);
                errors += s.speedError(i);
                count++;
            }
        }
        return count == 0 ? new Estimate(0, 1) : new Estimate(sum / count, errors / count);
    }

    private NextAct next(PlayerPath s, int after) {
        int start = play.clamp(after + UniformClock.ticks(0.1));
        int end = play.clamp(after + UniformClock.ticks(1.6));
        if (!s.seenThrough(start, end) || end - start < UniformClock.ticks(1)) {
            return NextAct.NOT_SEEN;
        }
        double moved = Math.hypot(s.x(end) - s.x(start), s.y(end) - s.y(start));
        double nearer = play.geometry().rimDistance(s.x(start), s.y(start))
                - play.geometry().rimDistance(s.x(end), s.y(end));
        if (moved < 0.8) {
            return play.geometry().inLane(s.x(end), s.y(end)) ? NextAct.SEAL : NextAct.STAND;
        }
        if (nearer > 0.5 * moved) {
            return NextAct.ROLL;
        }
        return nearer < -0.3 * moved ? NextAct.POP : NextAct.STAND;
    }

    PlayView view() {
        return view;
    }
}
