package floorgauge.events.cut;

import static floorgauge.events.words.Words.player;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.Threshold;
import floorgauge.events.finding.Unit;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.screen.Screen;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.statistics.Normal;
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Writes cuts as findings, and flags those that start too early or too late for their screen. */
public final class CutFindings {

    private static final double TIME_ERROR_SECONDS = 0.06;
    private static final double LEAST_RATE = 0.8;
    private static final int RATE_TICKS = UniformClock.ticks(0.16);
    private static final double UNSURE = 0.7;
    private static final int AFTER_TICKS = UniformClock.ticks(0.5);
    private static final int LONG_AGO_TICKS = UniformClock.ticks(1.5);
    private static final int REST_TICKS = UniformClock.ticks(0.12);

    private final Play play;
    private final Standards standards;

    public CutFindings(PlayView view) {
        this.play = view.play();
        this.standards = view.standards();
    }

    /** Every cut, then the flags of users who left too early or too late for their screen. */
    public List<Finding> of(List<Cut> cuts, List<Screen> screens) {
        List<Finding> found = new ArrayList<>();
        cuts.forEach(c -> found.add(event(c)));
        screens.forEach(s -> timing(s).ifPresent(found::add));
        return found;
    }

    private Finding event(Cut cut) {
        Figure top = Figure.of(
                "top speed",
                cut.cutter().speed(cut.fastest()),
                cut.cutter().speedError(cut.fastest()),
                Unit.METRES_PER_SECOND);
        Figure way = Figure.of(
                "displacement",
                cut.displacement(),
                cut.cutter().covariance(cut.end()).standardErrorMetres() * Math.sqrt(2),
                Unit.METRES);
        return new FindingDraft(FindingKind.CUT, cut.name(), play.time(cut.start()), play.time(cut.end()))
                .role(Role.CUTTER, cut.cutter())
                .figure(top)
                .figure(way)
                .sentence(
                        player(cut.cutter().trackId()) + " cuts " + Words.of(way) + " at up to " + Words.of(top) + ".")
                .frame(play.time(cut.leaves()), "cutter leaves")
                .frame(play.time(cut.fastest()), "fastest")
                .frame(play.time(cut.end()), "cut ends")
                .tick(play.time(cut.leaves()), TIME_ERROR_SECONDS, "cutter leaves")
                .tick(play.time(cut.start()), TIME_ERROR_SECONDS, "runs")
                .mark(new Mark.Path(cut.cutter().trackId(), play.time(cut.start()), play.time(cut.end()), way))
                .build();
    }

    /** The user's start against the moment at which his screener was set. A user with the ball starts when he likes. */
    private Optional<Finding> timing(Screen screen) {
        OptionalInt set = set(screen);
        if (set.isEmpty() || screen.kind().onBall()) {
            return Optional.empty();
        }
        int leaves = Cuts.start(screen.user(), screen.pass());
        double after = play.time(leaves) - play.time(set.getAsInt());
        double error = Math.hypot(timeError(screen.user(), leaves), timeError(screen.screener(), set.getAsInt()));
        double sound = screen.probability() * restKnown(screen.screener(), set.getAsInt());
        double early = sound * Normal.atMost(-standards.of(Setting.CUT_EARLY_TIME), after, error);
        double late = sound * (1 - Normal.atMost(standards.of(Setting.CUT_LATE_TIME), after, error));
        double least = standards.of(Setting.FLAG_PROBABILITY);
        if (Math.max(early, late) < least) {
            return Optional.empty();
        }
        Figure start = Figure.of("start after set", after, error, Unit.SECONDS);
        return Optional.of(flag(screen, leaves, set.getAsInt(), start, Math.max(early, late), early >= late));
    }

    private Finding flag(Screen screen, int leaves, int set, Figure start, double probability, boolean early) {
        double after = start.value();
        double error = start.standardError().orElseThrow();
        Setting setting = early ? Setting.CUT_EARLY_TIME : Setting.CUT_LATE_TIME;
        double limit = standards.of(setting);
        Figure figure = start.against(new Threshold(
                setting.key(), early ? -limit : limit, early ? Threshold.Side.AT_LEAST : Threshold.Side.AT_MOST));
        Figure away =
                Figure.of(early ? "time before the set" : "time after the set", Math.abs(after), error, Unit.SECONDS);
        double from = play.time(Math.min(leaves, set));
        double to = play.time(Math.max(screen.pass(), set));
        FindingDraft draft = new FindingDraft(
                        early ? FindingKind.EARLY_CUT : FindingKind.LATE_CUT,
                        screen.kind().words(),
                        from,
                        to)
                .role(Role.CUTTER, screen.user())
                .role(Role.SCREENER, screen.screener())
                .role(Role.USER, screen.user())
                .role(Role.USER_DEFENDER, screen.userDefender());
        screen.screenerDefender().ifPresent(e -> draft.role(Role.SCREENER_DEFENDER, e));
        return draft.figure(figure)
                .probability(probability)
                .severity(Math.abs(after) - limit, away)
                .sentence(player(screen.user().trackId()) + " leaves " + Words.of(away)
                        + (early ? " before " : " after ")
                        + player(screen.screener().trackId())
                        + " is set; the standard is at most " + Words.seconds(limit) + " (" + Words.sure(probability)
                        + ").")
                .frame(play.time(leaves), "cutter leaves")
                .frame(play.time(set), "screener is set")
                .frame(play.time(screen.pass()), "cutter passes the screen")
                .tick(play.time(leaves), TIME_ERROR_SECONDS, "cutter leaves")
                .tick(play.time(set), TIME_ERROR_SECONDS, "set")
                .tick(play.time(screen.moment()), TIME_ERROR_SECONDS, "screen")
                .mark(new Mark.Delay(from, Math.max(play.time(leaves), play.time(set)), away))
                .build();
    }

    /** Whether rest and walk can be told apart: hardly where the error of the speed is near the limit of rest. */
    private double restKnown(PlayerPath s, int i) {
        double share = s.speedError(i) / standards.of(Setting.SCREEN_SET_SPEED);
        return Math.exp(-0.6 * share * share);
    }

    /** The error of a moment at which a speed crosses a limit: the error of the speed over how quickly it changes there. */
    private static double timeError(PlayerPath p, int i) {
        int from = p.seen(i - RATE_TICKS) ? i - RATE_TICKS : i;
        int to = p.seen(i + RATE_TICKS) ? i + RATE_TICKS : i;
        double seconds = Math.max(1, to - from) / (double) UniformClock.RATE_HERTZ;
        double rate = Math.abs(p.speed(to) - p.speed(from)) / seconds;
        return Math.hypot(TIME_ERROR_SECONDS, p.speedError(i) / Math.max(LEAST_RATE, rate));
    }

    /**
     * When the screener came to rest: the start of his last rest up to half a second after the screen; empty where he had not
     * rested for a second and a half by then.
     */
    private OptionalInt set(Screen screen) {
        PlayerPath s = screen.screener();
        int until = play.clamp(Math.max(screen.moment(), screen.pass()) + AFTER_TICKS);
        int last = until;
        while (last > 0 && until - last <= LONG_AGO_TICKS && !isRest(s, last)) {
            last--;
        }
        if (!isRest(s, last) || until - last > LONG_AGO_TICKS) {
            return OptionalInt.empty();
        }
        int first = last;
        while (first > 0 && isSlow(s, first - 1)) {
            first--;
        }
        return OptionalInt.of(first);
    }

    /** Whether the rest that holds an instant has lasted long enough up to it. */
    private boolean isRest(PlayerPath s, int last) {
        for (int i = last; i > last - REST_TICKS; i--) {
            if (!isSlow(s, i)) {
                return false;
            }
        }
        return true;
    }

    /** A screener at rest seems to move by the error of his speed. */
    private boolean isSlow(PlayerPath s, int i) {
        return s.seen(i) && s.speed(i) <= standards.of(Setting.SCREEN_SET_SPEED) + UNSURE * s.speedError(i);
    }
}
