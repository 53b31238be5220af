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
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes cuts as findings, and flags those that start too early or too late for their screen. */
public final class CutFindings {

    private static final double TIME_ERROR_SECONDS = 0.06;
    private static final double LEAST_RATE = 0.8;
    private static final int RATE_TICKS = UniformClock.ticks(0.16);

    private static final double HAS_BALL = 0.5;
    private static final double LIKELIER = 0.5;

    private final PlayView view;
    private final Play play;
    private final Standards standards;

    public CutFindings(PlayView view) {
        this.view = view;
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
        Optional<SetMoment> set = set(screen);
        if (set.isEmpty()) {
            return Optional.empty();
        }
        SetMoment moment = set.get();
        int leaves = Cuts.start(screen.user(), screen.pass());
        double leavesError = timeError(screen.user(), leaves);
        double sound = screen.probability() * moment.rested();
        double early = sound * moment.leftAtMost(-standards.of(Setting.CUT_EARLY_TIME), leaves, leavesError);
        double late = sound * (1 - moment.leftAtMost(standards.of(Setting.CUT_LATE_TIME), leaves, leavesError));
        double least = standards.of(Setting.FLAG_PROBABILITY);
        if (Math.max(early, late) < least) {
            return Optional.empty();
        }
        int at = moment.median();
        double error = Math.hypot(Math.hypot(TIME_ERROR_SECONDS, moment.error()), leavesError);
        Figure start = Figure.of("start after set", play.time(leaves) - play.time(at), error, Unit.SECONDS);
        return Optional.of(flag(screen, leaves, at, start, Math.max(early, late), early >= late));
    }

    /** Empty too for a user who has the ball by the time he is past the screener: when he left is no question then. */
    private Optional<SetMoment> set(Screen screen) {
        boolean hasBall =
                screen.kind().onBall() || view.control().probability(screen.user(), screen.pass()) >= HAS_BALL;
        return hasBall ? Optional.empty() : SetMoment.of(screen, play, standards);
    }

    /**
     * Probability that the user left before his screener was set, given that it is a screen, where that is likelier than not; else 0. Then
     * the screener had no time to be set and moves through no fault of his own.
     */
    public double early(Screen screen) {
        int leaves = Cuts.start(screen.user(), screen.pass());
        double early = set(screen)
                .map(s -> s.rested()
                        * s.leftAtMost(-standards.of(Setting.CUT_EARLY_TIME), leaves, timeError(screen.user(), leaves)))
                .orElse(0.0);
        return early >= LIKELIER ? early : 0;
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

    /** The error of a moment at which a speed crosses a limit: the error of the speed over how quickly it changes there. */
    private static double timeError(PlayerPath p, int i) {
        int from = p.seen(i - RATE_TICKS) ? i - RATE_TICKS : i;
        int to = p.seen(i + RATE_TICKS) ? i + RATE_TICKS : i;
        double seconds = Math.max(1, to - from) / (double) UniformClock.RATE_HERTZ;
        double rate = Math.abs(p.speed(to) - p.speed(from)) / seconds;
        return Math.hypot(TIME_ERROR_SECONDS, p.speedError(i) / Math.max(LEAST_RATE, rate));
    }
}
