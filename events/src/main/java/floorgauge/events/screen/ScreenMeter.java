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
import java.util.OptionalDouble;

/** Measures a candidate. */
final class ScreenMeter {

    private static final int BEFORE_PASS_TICKS = UniformClock.ticks(1.0);
    private static final int AFTER_PASS_TICKS = UniformClock.ticks(0.6);
    private static final int AT_CONTACT_TICKS = UniformClock.ticks(0.2);
    private static final int LEAD_TICKS = UniformClock.ticks(0.3);
    private static final int APPROACH_TICKS = UniformClock.ticks(3.5);
    private static final int RECOVERY_TICKS = UniformClock.ticks(3);
    private static final double PLATEAU_METRES = 0.02;
    /** An arm's length: nearer than this a moving screener holds up the defender, bodies touching or not. */
    private static final double REACH_GAP_METRES = 0.3;

    private static final double STRUCK_METRES = 0.06;
    private static final double NEVER_NEAR_METRES = 2.0;
    private static final double FULL_BASE = 1.5;
    private static final double NO_BASE = 1.0;
    private static final double LEAST_CHASE_SPEED = 0.5;

    private final PlayView view;
    private final Play play;
    private final Standards standards;
    private final ContactMeter contact;
    private final ScreenKinds kinds;

    ScreenMeter(PlayView view) {
        this.view = view;
        this.play = view.play();
        this.standards = view.standards();
        this.contact = new ContactMeter(standards);
        this.kinds = new ScreenKinds(view);
    }

    Screen measure(ScreenCandidate c) {
        PlayerPath s = c.screener();
        PlayerPath u = c.user();
        PlayerPath d = c.userDefender();
        int from = play.clamp(c.pass() - BEFORE_PASS_TICKS);
        int to = play.clamp(c.pass() + AFTER_PASS_TICKS);
        int moment = moment(c, from, to);
        double contactProbability = contact.contactProbability(s, d, from, to);
        int atContact = Math.min(moment, c.pass());
        Estimate separationBefore = separation(u, d, play.clamp(moment - LEAD_TICKS), moment);
        int best = widest(u, d, moment);
        Optional<Estimate> gained =
                best < 0 ? Optional.empty() : Optional.of(difference(separation(u, d, best, moment), separationBefore));
        Estimate brush = ContactMeter.gap(u, s, c.pass());
        ScreenUse use = use(c, moment, contactProbability);
        int setTicks = UniformClock.ticks(standards.of(Setting.SCREEN_SET_TIME));
        int struck = lastContact(c, moment);
        Estimate speed = meanSpeed(s, struck - setTicks, struck);
        double moving = 1 - speed.probabilityAtMost(standards.of(Setting.SCREEN_SET_SPEED));
        ScreenQuality quality = quality(c, moment, contactProbability, brush, gained);
        return new Screen(
                s,
                u,
                d,
                c.screenerDefender(),
                c.pass(),
                moment,
                play.clamp(Math.min(moment, c.pass()) - UniformClock.ticks(standards.of(Setting.SCREEN_SET_TIME))),
                play.clamp(Math.max(moment, c.pass()) + UniformClock.ticks(1)),
                probability(c, moment, contactProbability),
                kinds.kind(c, moment),
                use,
                gapAt(s, d, moment),
                contactProbability,
                contact.contactSeconds(s, d, from, to),
                speed,
                unit(moving * contact.withinProbability(REACH_GAP_METRES, s, d, from, to)),
                brush,
                separationBefore,
                trailing(c, moment),
                gained,
                best < 0 ? moment : best,
                timeLost(u, d, moment, separationBefore.value()),
                next(s, Math.max(moment, c.pass())),
                quality);
    }

    /** Of the instants at which D and S are nearest, to a few centimetres, the one nearest to the pass. */
    private int moment(ScreenCandidate c, int from, int to) {
        PlayerPath s = c.screener();
        PlayerPath d = c.userDefender();
        double least = Double.POSITIVE_INFINITY;
        for (int i = from; i <= to; i++) {
            if (s.seen(i) && d.seen(i)) {
                least = Math.min(least, s.distanceTo(d, i));
            }
        }
        if (least > NEVER_NEAR_METRES) {
            return c.pass();
        }
        int best = c.pass();
        int away = Integer.MAX_VALUE;
        for (int i = from; i <= to; i++) {
            boolean near = s.seen(i) && d.seen(i) && s.distanceTo(d, i) <= least + PLATEAU_METRES;
            if (near && Math.abs(i - c.pass()) < away) {
                away = Math.abs(i - c.pass());
                best = i;
            }
        }
        return best;
    }

    /** The last instant up to the pass at which S and D are as near as at the screen's moment, to a few centimetres. */
    private static int lastContact(ScreenCandidate c, int moment) {
        PlayerPath s = c.screener();
        PlayerPath d = c.userDefender();
        int until = Math.max(moment, c.pass());
        if (!s.seen(moment) || !d.seen(moment)) {
            return Math.min(moment, c.pass());
        }
        double near = s.distanceTo(d, moment) + STRUCK_METRES;
        for (int i = Math.min(until, c.pass()); i > moment; i--) {
            if (s.seen(i) && d.seen(i) && s.distanceTo(d, i) <= near) {
                return i;
            }
        }
        return Math.min(moment, c.pass());
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
    private int widest(PlayerPath u, PlayerPath d, int moment) {
        int span = UniformClock.ticks(standards.of(Setting.SCREEN_SEPARATION_TIME));
        int best = -1;
        int count = 0;
        for (int i = moment; i <= moment + span; i++) {
            if (u.seen(i) && d.seen(i)) {
                count++;
                if (best < 0 || u.distanceTo(d, i) > u.distanceTo(d, best)) {
                    best = i;
                }
            }
        }
        return count * 2 >= span ? best : -1;
    }

    /**
     * From when D loses U, by the recovered distance or as near as he was, whichever is more, until he is back; 0 where he
     * never lost him.
     */
    private OptionalDouble timeLost(PlayerPath u, PlayerPath d, int moment, double before) {
        double back = Math.max(standards.of(Setting.SCREEN_RECOVERED_DISTANCE), before);
        int lost = -1;
        for (int i = moment; i <= moment + RECOVERY_TICKS; i++) {
            if (!u.seen(i) || !d.seen(i)) {
                return OptionalDouble.empty();
            }
            boolean away = u.distanceTo(d, i) > back;
            if (away && lost < 0) {
                lost = i;
            } else if (!away && lost >= 0) {
                return OptionalDouble.of((i - lost) / (double) UniformClock.RATE_HERTZ);
            }
        }
        return lost < 0 ? OptionalDouble.of(0) : OptionalDouble.empty();
    }

    private double slowShare(PlayerPath s, int from, int to) {
        double sum = 0;
        int count = 0;
        for (int i = from; i <= to; i++) {
            if (s.seen(i)) {
                sum += s.slowerThan(standards.of(Setting.SCREEN_SET_SPEED), i);
                count++;
            }
        }
        return count == 0 ? 1 : sum / count;
    }

    /** Mean speed over neighbouring instants, whose errors go together. */
    private static Estimate meanSpeed(PlayerPath s, int from, int to) {
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

    /**
     * That this is a screen: S came to D or U on purpose, or stands in D's way, and is slow when U goes by.
     */
    private double probability(ScreenCandidate c, int moment, double contactProbability) {
        double approach = logistic((approach(c, Math.min(moment, c.pass())) - 0.6) / 0.15);
        double inTheWay = Math.max(contactProbability, near(c, moment));
        double slow = logistic((1.9
                        - meanSpeed(c.screener(), c.pass() - AT_CONTACT_TICKS, Math.min(moment, c.pass()) + 1)
                                .value())
                / 0.2);
        return (1 - (1 - approach) * (1 - inTheWay)) * slow;
    }

    private static double near(ScreenCandidate c, int moment) {
        return c.screener().seen(moment) && c.userDefender().seen(moment)
                ? c.screener().within(0.25 + 2 * ContactMeter.BODY_RADIUS_METRES, c.userDefender(), moment)
                : 0;
    }

    /** How far S's own motion brought him nearer to where D then was, metres. */
    private double approach(ScreenCandidate c, int until) {
        PlayerPath s = c.screener();
        PlayerPath d = c.userDefender();
        double best = 0;
        double sum = 0;
        for (int i = until; i >= Math.max(0, until - APPROACH_TICKS); i--) {
            if (!s.seen(i) || !d.seen(i)) {
                break;
            }
            double distance = Math.max(1e-6, s.distanceTo(d, i));
            double closing = (s.vx(i) * (d.x(i) - s.x(i)) + s.vy(i) * (d.y(i) - s.y(i))) / distance;
            sum += closing / UniformClock.RATE_HERTZ;
            best = Math.max(best, sum);
        }
        return best;
    }

    /** Whether D passes S on the side on which U does, and so runs after U and not under the screen. */
    private static boolean trailing(ScreenCandidate c, int moment) {
        PlayerPath s = c.screener();
        PlayerPath u = c.user();
        PlayerPath d = c.userDefender();
        int p = c.pass();
        if (!s.seen(moment) || !d.seen(moment)) {
            return false;
        }
        double userSide = u.vx(p) * (u.y(p) - s.y(p)) - u.vy(p) * (u.x(p) - s.x(p));
        double defenderSide = u.vx(p) * (d.y(moment) - s.y(moment)) - u.vy(p) * (d.x(moment) - s.x(moment));
        return userSide * defenderSide > 0;
    }

    private ScreenUse use(ScreenCandidate c, int moment, double contactProbability) {
        return kinds.use(c, moment, contactProbability);
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

    private ScreenQuality quality(
            ScreenCandidate c, int moment, double contactProbability, Estimate brush, Optional<Estimate> gained) {
        Map<QualityPart, Double> parts = new EnumMap<>(QualityPart.class);
        PlayerPath s = c.screener();
        parts.put(QualityPart.CONTACT, contactProbability);
        int setTicks = UniformClock.ticks(standards.of(Setting.SCREEN_SET_TIME));
        int atContact = Math.min(moment, c.pass());
        parts.put(QualityPart.SET, unit(slowShare(s, atContact - setTicks, atContact)));
        base(s, atContact).ifPresent(v -> parts.put(QualityPart.BASE, v));
        angle(s, c.userDefender(), atContact).ifPresent(v -> parts.put(QualityPart.ANGLE, v));
        double full = standards.of(Setting.SCREEN_BRUSH_FULL);
        double none = standards.of(Setting.SCREEN_BRUSH_NONE);
        parts.put(QualityPart.BRUSH, unit((none - brush.value()) / Math.max(1e-9, none - full)));
        gained.ifPresent(
                g -> parts.put(QualityPart.EFFECT, unit(g.value() / standards.of(Setting.SCREEN_FULL_SEPARATION))));
        return new ScreenQuality(parts);
    }

    private static OptionalDouble base(PlayerPath s, int at) {
        double sum = 0;
        int count = 0;
        for (int i = at - LEAD_TICKS; i <= at + LEAD_TICKS / 2; i++) {
            if (s.seen(i) && !Double.isNaN(s.stance(i))) {
                sum += s.stance(i);
                count++;
            }
        }
        return count == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(unit((sum / count - NO_BASE) / (FULL_BASE - NO_BASE)));
    }

    private static OptionalDouble angle(PlayerPath s, PlayerPath d, int at) {
        double sum = 0;
        int count = 0;
        for (int i = at - LEAD_TICKS; i <= at + LEAD_TICKS; i++) {
            boolean usable = s.seen(i) && d.seen(i) && !Double.isNaN(s.facing(i)) && d.speed(i) > LEAST_CHASE_SPEED;
            if (usable) {
                sum += Math.abs(Math.cos(s.facing(i) - Math.atan2(d.vy(i), d.vx(i))));
                count++;
            }
        }
        return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(unit(sum / count));
    }

    private static double unit(double value) {
        return Math.max(0, Math.min(1, value));
    }

    private static double logistic(double value) {
        return 1 / (1 + Math.exp(-value));
    }

    PlayView view() {
        return view;
    }
}
