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
    private static final double IN_PLACE_METRES = 0.8;
    private static final int LATEST_SET_TICKS = UniformClock.ticks(1.5);
    private static final int AT_REST_TICKS = UniformClock.ticks(0.12);

    private final Play play;
    private final Standards standards;

    public CutFindings(PlayView view) {
        this.play = view.play();
        this.standards = view.standards();
    }

    /** Every cut, each with its flag. */
    public List<Finding> of(List<Cut> cuts, List<Screen> screens) {
        List<Finding> found = new ArrayList<>();
        for (Cut cut : cuts) {
            found.add(event(cut));
            screenOf(cut, screens).flatMap(s -> flag(cut, s)).ifPresent(found::add);
        }
        return found;
    }

    private Optional<Screen> screenOf(Cut cut, List<Screen> screens) {
        return screens.stream()
                .filter(s ->
                        s.user() == cut.cutter() && s.pass() >= cut.start() - AT_REST_TICKS && s.pass() <= cut.end())
                .findFirst();
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
        return new FindingDraft(FindingKind.CUT, cut.name() + " cut", play.time(cut.start()), play.time(cut.end()))
                .role(Role.CUTTER, cut.cutter())
                .figure(top)
                .figure(way)
                .sentence(
                        player(cut.cutter().trackId()) + " cuts " + Words.of(way) + " at up to " + Words.of(top) + ".")
                .frame(play.time(cut.start()), "cut starts")
                .frame(play.time(cut.fastest()), "fastest")
                .frame(play.time(cut.end()), "cut ends")
                .tick(play.time(cut.start()), TIME_ERROR_SECONDS, "cut starts")
                .mark(new Mark.Path(cut.cutter().trackId(), play.time(cut.start()), play.time(cut.end()), way))
                .build();
    }

    private Optional<Finding> flag(Cut cut, Screen screen) {
        OptionalInt set = set(screen);
        if (set.isEmpty()) {
            return Optional.empty();
        }
        double after = play.time(cut.start()) - play.time(set.getAsInt());
        double error = TIME_ERROR_SECONDS * Math.sqrt(2);
        double early = Normal.atMost(-standards.of(Setting.CUT_EARLY_TIME), after, error) * screen.probability();
        double late = (1 - Normal.atMost(standards.of(Setting.CUT_LATE_TIME), after, error)) * screen.probability();
        double least = standards.of(Setting.FLAG_PROBABILITY);
        if (early >= least && !isInPlace(screen, cut.start())) {
            return Optional.empty();
        }
        if (early >= least) {
            return Optional.of(flag(cut, screen, set.getAsInt(), after, early, true));
        }
        return late >= least ? Optional.of(flag(cut, screen, set.getAsInt(), after, late, false)) : Optional.empty();
    }

    private Finding flag(Cut cut, Screen screen, int set, double after, double probability, boolean early) {
        Setting setting = early ? Setting.CUT_EARLY_TIME : Setting.CUT_LATE_TIME;
        double limit = standards.of(setting);
        Figure figure = Figure.of("start after set", after, TIME_ERROR_SECONDS * Math.sqrt(2), Unit.SECONDS)
                .against(new Threshold(
                        setting.key(),
                        early ? -limit : limit,
                        early ? Threshold.Side.AT_LEAST : Threshold.Side.AT_MOST));
        Figure away = Figure.of(
                early ? "time before the set" : "time after the set",
                Math.abs(after),
                TIME_ERROR_SECONDS * Math.sqrt(2),
                Unit.SECONDS);
        FindingKind kind = early ? FindingKind.EARLY_CUT : FindingKind.LATE_CUT;
        double from = Math.min(play.time(cut.start()), play.time(set));
        double to = Math.max(play.time(cut.end()), play.time(set));
        return new FindingDraft(kind, kind.words(), from, to)
                .role(Role.CUTTER, cut.cutter())
                .role(Role.SCREENER, screen.screener())
                .figure(figure)
                .probability(probability)
                .severity(Math.abs(after) - limit, away)
                .sentence(player(cut.cutter().trackId()) + " leaves " + Words.of(away)
                        + (early ? " before " : " after ")
                        + player(screen.screener().trackId())
                        + " is set; the standard is at most " + Words.seconds(limit) + " (" + Words.sure(probability)
                        + ").")
                .frame(play.time(cut.start()), "cutter leaves")
                .frame(play.time(set), "screener is set")
                .frame(play.time(screen.pass()), "cutter passes the screen")
                .tick(play.time(cut.start()), TIME_ERROR_SECONDS, "cutter leaves")
                .tick(play.time(set), TIME_ERROR_SECONDS, "set")
                .mark(new Mark.Delay(from, Math.max(play.time(cut.start()), play.time(set)), away))
                .build();
    }

    /**
     * When the screener came to rest: the start of the rest that holds the user's passing, else the first rest within 1.5 s
     * after it; empty where he never rests.
     */
    private OptionalInt set(Screen screen) {
        PlayerPath s = screen.screener();
        int i = screen.pass();
        if (isSlow(s, i)) {
            while (i > 0 && isSlow(s, i - 1)) {
                i--;
            }
            return OptionalInt.of(i);
        }
        for (int k = i; k <= play.clamp(i + LATEST_SET_TICKS); k++) {
            if (restsFrom(s, k)) {
                return OptionalInt.of(k);
            }
        }
        return OptionalInt.empty();
    }

    /**
     * Whether the screener was there when the cutter left: one who was still coming is at fault himself, and is held against
     * the standard of a moving screen.
     */
    private static boolean isInPlace(Screen screen, int i) {
        return screen.screener().seen(i)
                && screen.userDefender().seen(i)
                && screen.screener().distanceTo(screen.userDefender(), i) <= IN_PLACE_METRES;
    }

    private boolean restsFrom(PlayerPath s, int from) {
        for (int i = from; i <= from + AT_REST_TICKS; i++) {
            if (!isSlow(s, i)) {
                return false;
            }
        }
        return true;
    }

    private boolean isSlow(PlayerPath s, int i) {
        return s.seen(i) && s.speed(i) <= standards.of(Setting.SCREEN_SET_SPEED);
    }
}
