package floorgauge.events.pass;

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

/**
 * Writes what happened to the ball, and flags passes that came late and windows that were missed. Only windows that an
 * action opened are held against a passer: one for the user of a screen, for its screener, or for a cutter. A shooter whom
 * nobody guards is open all along, and to leave him be is a choice.
 */
public final class PassFindings {

    private static final double TICK_ERROR_SECONDS = 0.03;
    private static final double FACES_RADIANS = Math.toRadians(60);
    private static final int OWN_SHOT_TICKS = UniformClock.ticks(1.0);
    private static final int ACTION_TICKS = UniformClock.ticks(2.5);
    private static final int OPENED_BEFORE_TICKS = UniformClock.ticks(0.6);

    private final Play play;
    private final Standards standards;
    private final List<BallEvent> events;
    private final List<OpenWindow> windows;
    private final OpenWindows meter;
    private final List<Screen> screens;

    public PassFindings(PlayView view, List<BallEvent> events, List<Screen> screens) {
        this.play = view.play();
        this.standards = view.standards();
        this.events = events;
        this.screens = screens;
        this.meter = new OpenWindows(view);
        this.windows = meter.find();
    }

    public List<Finding> find() {
        List<Finding> found = new ArrayList<>();
        for (BallEvent event : events) {
            if (play.inCore(event.release())) {
                found.add(event(event));
                late(event).ifPresent(found::add);
            }
        }
        for (OpenWindow window : windows) {
            found.add(window(window));
            if (fromAction(window)) {
                missed(window).ifPresent(found::add);
            }
        }
        return found;
    }

    private boolean fromAction(OpenWindow window) {
        return window.seenToOpen()
                && screens.stream()
                        .anyMatch(s -> (s.user() == window.receiver() || s.screener() == window.receiver())
                                && window.open() >= Math.min(s.moment(), s.pass()) - OPENED_BEFORE_TICKS
                                && window.open() <= Math.max(s.moment(), s.pass()) + ACTION_TICKS);
    }

    private Finding event(BallEvent e) {
        FindingKind kind = switch (e.kind()) {
            case PASS -> FindingKind.PASS;
            case HANDOFF -> FindingKind.HANDOFF;
            case SHOT -> FindingKind.SHOT;
            case TURNOVER -> FindingKind.TURNOVER;
        };
        double release = play.time(e.release());
        double reception = play.time(e.reception());
        FindingDraft draft = new FindingDraft(kind, kind.words(), release, reception)
                .role(e.kind() == BallEvent.Kind.SHOT ? Role.SHOOTER : Role.PASSER, e.from())
                .tick(release, TICK_ERROR_SECONDS, "release")
                .frame(release, "release");
        String from = player(e.from().trackId());
        if (e.to().isEmpty()) {
            double distance = play.geometry()
                    .rimDistance(e.from().x(e.release()), e.from().y(e.release()));
            Figure rim = Figure.of(
                    "distance to the rim",
                    distance,
                    e.from().covariance(e.release()).standardErrorMetres(),
                    Unit.METRES);
            return draft.figure(rim)
                    .sentence(from + " shoots from " + Words.of(rim) + ".")
                    .build();
        }
        PlayerPath to = e.to().get();
        Figure flight = Figure.of("flight time", reception - release, TICK_ERROR_SECONDS, Unit.SECONDS);
        draft.role(e.kind() == BallEvent.Kind.TURNOVER ? Role.DEFENDER : Role.RECEIVER, to)
                .figure(flight)
                .tick(reception, TICK_ERROR_SECONDS, "reception")
                .frame(reception, "reception");
        String verb = switch (e.kind()) {
            case HANDOFF -> " hands the ball to ";
            case TURNOVER -> " loses the ball to ";
            default -> " passes to ";
        };
        openedFor(e)
                .ifPresent(w -> draft.figure(delay(e, w)).tick(play.time(w.open()), w.openingError(), "window opens"));
        return draft.sentence(from + verb + player(to.trackId()) + ", " + Words.of(flight) + " in the air.")
                .build();
    }

    /** The receiver's last window before the release, in the passer's same control of the ball. */
    private Optional<OpenWindow> openedFor(BallEvent e) {
        return windows.stream()
                .filter(w -> e.kind() == BallEvent.Kind.PASS
                        && w.passer() == e.from()
                        && w.receiver() == e.to().orElse(null)
                        && w.open() >= e.gained()
                        && w.open() <= e.release())
                .reduce((a, b) -> b);
    }

    private Figure delay(BallEvent e, OpenWindow w) {
        return Figure.of(
                        "delay",
                        play.time(e.release()) - play.time(w.open()),
                        Math.hypot(w.openingError(), TICK_ERROR_SECONDS),
                        Unit.SECONDS)
                .against(new Threshold(
                        Setting.PASS_ON_TIME.key(), standards.of(Setting.PASS_ON_TIME), Threshold.Side.AT_MOST));
    }

    private Optional<Finding> late(BallEvent e) {
        Optional<OpenWindow> window = openedFor(e);
        if (window.isEmpty()) {
            return Optional.empty();
        }
        OpenWindow w = window.get();
        PlayerPath receiver = w.receiver();
        Figure delay = delay(e, w);
        double limit = standards.of(Setting.PASS_ON_TIME);
        double late =
                1 - Normal.atMost(limit, delay.value(), delay.standardError().orElseThrow());
        int reception = Math.min(e.reception(), play.size() - 1);
        double atReception = receiver.seen(reception) ? meter.nearest(receiver, reception) : 0;
        double widest = widest(receiver, w);
        double error = receiver.covariance(w.open()).standardErrorMetres() * Math.sqrt(2);
        double closed = w.close() < e.release() - 1
                ? 1
                : Math.max(
                        Normal.atMost(w.separation() / 2, atReception, error),
                        Normal.atMost(standards.of(Setting.WINDOW_OPEN_DISTANCE), atReception, error));
        double probability = late * closed * there(w);
        if (probability < standards.of(Setting.FLAG_PROBABILITY)) {
            return Optional.empty();
        }
        Figure lost = Figure.of("separation lost", widest - atReception, error, Unit.METRES);
        String sentence = player(e.from().trackId()) + " passes to " + player(receiver.trackId()) + " "
                + Words.of(delay) + " after the window opens; on time is at most " + Words.seconds(limit) + ", and "
                + player(receiver.trackId()) + " has lost " + Words.of(lost) + " by then (" + Words.sure(probability)
                + ").";
        return Optional.of(
                new FindingDraft(FindingKind.LATE_PASS, "late pass", play.time(w.open()), play.time(reception))
                        .role(Role.PASSER, e.from())
                        .role(Role.RECEIVER, receiver)
                        .figure(delay)
                        .figure(Figure.of("separation at opening", w.separation(), error, Unit.METRES))
                        .figure(Figure.of("separation at reception", atReception, error, Unit.METRES))
                        .figure(lost)
                        .probability(probability)
                        .severity(Math.max(delay.value() - limit, lost.value() / 2), lost)
                        .sentence(sentence)
                        .frame(play.time(w.open()), "window opens")
                        .frame(play.time(e.release()), "release")
                        .frame(play.time(reception), "reception")
                        .tick(play.time(w.open()), w.openingError(), "window opens")
                        .tick(play.time(w.close()), w.openingError(), "window closes")
                        .tick(play.time(e.release()), TICK_ERROR_SECONDS, "release")
                        .tick(play.time(reception), TICK_ERROR_SECONDS, "reception")
                        .mark(new Mark.Delay(play.time(w.open()), play.time(e.release()), delay))
                        .build());
    }

    /** That there was a window at all, and not an error of the tracks: half as long as the shortest, it is none. */
    private double there(OpenWindow w) {
        Figure length = length(w);
        return 1
                - Normal.atMost(
                        standards.of(Setting.WINDOW_TIME) / 2,
                        length.value(),
                        length.standardError().orElseThrow());
    }

    private double widest(PlayerPath receiver, OpenWindow w) {
        double widest = 0;
        for (int i = w.open(); i <= w.close(); i++) {
            widest = Math.max(widest, meter.nearest(receiver, i));
        }
        return widest;
    }

    private Finding window(OpenWindow w) {
        Figure length = length(w);
        return new FindingDraft(FindingKind.OPEN_WINDOW, "open window", play.time(w.open()), play.time(w.close()))
                .role(Role.RECEIVER, w.receiver())
                .role(Role.PASSER, w.passer())
                .figure(length)
                .figure(Figure.of(
                        "separation at opening",
                        w.separation(),
                        w.receiver().covariance(w.open()).standardErrorMetres() * Math.sqrt(2),
                        Unit.METRES))
                .sentence(player(w.receiver().trackId()) + " is open to "
                        + player(w.passer().trackId()) + " for " + Words.of(length) + ".")
                .frame(play.time(w.open()), "window opens")
                .frame(play.time(w.close()), "window closes")
                .tick(play.time(w.open()), w.openingError(), "window opens")
                .tick(play.time(w.close()), w.openingError(), "window closes")
                .build();
    }

    private Figure length(OpenWindow w) {
        return Figure.of(
                "window length",
                (w.close() - w.open() + 1) / (double) UniformClock.RATE_HERTZ,
                w.openingError() * Math.sqrt(2),
                Unit.SECONDS);
    }

    /** The ball was kept through the whole window by a passer who faced it and did not shoot himself. */
    private Optional<Finding> missed(OpenWindow w) {
        Figure length = length(w);
        double least = standards.of(Setting.WINDOW_MISSED_TIME);
        boolean passed = events.stream()
                .anyMatch(e -> e.from() == w.passer() && e.release() >= w.open() - 1 && e.release() <= w.close() + 1);
        boolean shot = events.stream()
                .anyMatch(e -> e.from() == w.passer()
                        && e.kind() == BallEvent.Kind.SHOT
                        && e.release() >= w.open()
                        && e.release() <= w.close() + OWN_SHOT_TICKS);
        boolean passedAfter = events.stream()
                .anyMatch(e -> e.from() == w.passer()
                        && e.to().orElse(null) == w.receiver()
                        && e.release() > w.close()
                        && e.gained() <= w.open());
        double facing = facing(w);
        double probability =
                (1 - Normal.atMost(least, length.value(), length.standardError().orElseThrow()))
                        * (Double.isNaN(facing) ? 0 : mostly(facing));
        if (passed || shot || passedAfter || probability < standards.of(Setting.FLAG_PROBABILITY)) {
            return Optional.empty();
        }
        int middle = (w.open() + w.close()) / 2;
        Figure separation = Figure.of(
                "widest separation",
                widest(w.receiver(), w),
                w.receiver().covariance(middle).standardErrorMetres() * Math.sqrt(2),
                Unit.METRES);
        return Optional.of(new FindingDraft(
                        FindingKind.MISSED_WINDOW, "missed window", play.time(w.open()), play.time(w.close()))
                .role(Role.PASSER, w.passer())
                .role(Role.RECEIVER, w.receiver())
                .figure(length.against(new Threshold(Setting.WINDOW_MISSED_TIME.key(), least, Threshold.Side.AT_MOST)))
                .figure(separation)
                .probability(probability)
                .severity(length.value() / 2, length)
                .sentence(player(w.passer().trackId()) + " keeps the ball while "
                        + player(w.receiver().trackId())
                        + " is open for " + Words.of(length) + ", up to " + Words.of(separation)
                        + " from the nearest defender (" + Words.sure(probability) + ").")
                .frame(play.time(w.open()), "window opens")
                .frame(play.time(middle), "open")
                .frame(play.time(w.close()), "window closes")
                .tick(play.time(w.open()), w.openingError(), "window opens")
                .tick(play.time(w.close()), w.openingError(), "window closes")
                .mark(new Mark.Delay(play.time(w.open()), play.time(w.close()), length))
                .build());
    }

    /** That a share is more than half. */
    private static double mostly(double share) {
        return 1 / (1 + Math.exp((0.5 - share) / 0.05));
    }

    /** Share of the window in which the receiver was within 60 degrees of the passer's front; NaN where it was not seen. */
    private double facing(OpenWindow w) {
        int count = 0;
        int facing = 0;
        for (int i = w.open(); i <= w.close(); i++) {
            PlayerPath p = w.passer();
            if (!Double.isNaN(p.facing(i)) && w.receiver().seen(i)) {
                double toward =
                        Math.atan2(w.receiver().y(i) - p.y(i), w.receiver().x(i) - p.x(i));
                count++;
                facing += Math.abs(Math.IEEEremainder(p.facing(i) - toward, 2 * Math.PI)) < FACES_RADIANS ? 1 : 0;
            }
        }
        return count == 0 ? Double.NaN : facing / (double) count;
    }
}
