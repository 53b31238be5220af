package floorgauge.events;

import floorgauge.events.control.BallControl;
import floorgauge.events.control.InferredControl;
import floorgauge.events.control.TrackedControl;
import floorgauge.events.cut.Cut;
import floorgauge.events.cut.CutFindings;
import floorgauge.events.cut.Cuts;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import floorgauge.events.matchup.Matchups;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.pass.BallEvent;
import floorgauge.events.pass.BallEvents;
import floorgauge.events.pass.NumbersAdvantage;
import floorgauge.events.pass.PassFindings;
import floorgauge.events.play.Play;
import floorgauge.events.play.PlayerPath;
import floorgauge.events.screen.Screen;
import floorgauge.events.screen.ScreenChains;
import floorgauge.events.screen.ScreenFindings;
import floorgauge.events.screen.Screens;
import floorgauge.events.screen.Switches;
import floorgauge.events.spacing.ActionSpans;
import floorgauge.events.spacing.CrowdedFloor;
import floorgauge.events.spacing.SpacingMeter;
import floorgauge.events.spacing.SpacingSpan;
import floorgauge.events.spacing.StillFloor;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.view.PlayView;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Measures one play: all kinds of finding, in the order in which they need each other. */
final class PlayMeasurement {

    private static final int ACTION_BEFORE_TICKS = UniformClock.ticks(1.5);
    private static final int ACTION_AFTER_TICKS = UniformClock.ticks(1.5);
    private static final int HANDOFF_TICKS = UniformClock.ticks(1.0);
    private static final int FULL_TEAM = 5;

    private final Play play;
    private final int number;
    private final Doubts doubts;
    private final PlayView view;

    PlayMeasurement(Play play, int number, Standards standards, Doubts doubts) {
        this.play = play;
        this.number = number;
        this.doubts = doubts;
        BallControl control = play.ball().isPresent() ? new TrackedControl(play, standards) : new InferredControl(play);
        this.view = new PlayView(play, new Matchups(play), control, standards);
    }

    PossessionFindings measure() {
        List<Finding> findings = new ArrayList<>();
        ActionSpans actions = new ActionSpans();
        CutFindings cutFindings = new CutFindings(view);
        ScreenFindings screenFindings = new ScreenFindings(view, cutFindings::early);
        List<Screen> possible = Screens.possible(view);
        List<Screen> screens = Screens.likely(possible);
        List<BallEvent> balls = BallEvents.of(view);
        List<Cut> cuts = Cuts.of(view);
        for (Screen screen : screens) {
            findings.addAll(screenFindings.of(screen));
            new Switches(view).of(screen).ifPresent(findings::add);
            findings.addAll(new NumbersAdvantage(view).of(screen));
            actions.add(nearFrom(screen), nearTo(screen), List.of(screen.screener(), screen.user()));
        }
        possible.stream()
                .filter(s -> s.probability() < Screens.LEAST_PROBABILITY)
                .forEach(s -> actions.maybe(nearFrom(s), nearTo(s), List.of(s.screener(), s.user()), s.probability()));
        cuts.forEach(c -> actions.add(c.start(), c.end(), List.of(c.cutter())));
        balls.stream()
                .filter(e -> e.kind() == BallEvent.Kind.HANDOFF)
                .forEach(e -> actions.add(
                        e.release() - HANDOFF_TICKS,
                        e.reception() + HANDOFF_TICKS,
                        List.of(e.from(), e.to().orElseThrow())));
        findings.addAll(new PassFindings(view, balls, screens).find());
        findings.addAll(cutFindings.of(cuts, screens));
        findings.addAll(new ScreenChains(view).of(screens));
        Optional<BallEvent> end = lastBall(balls);
        SpacingSpan span = SpacingSpan.of(view, end.map(PlayMeasurement::over).orElse(play.size()));
        findings.addAll(new StillFloor(view, actions, span).find());
        findings.addAll(new CrowdedFloor(view, actions, span).find());
        return new PossessionFindings(
                possession(end),
                sorted(beforeEnd(findings, end)),
                new SpacingMeter(view, actions).series(),
                trails(),
                notSeen());
    }

    /** The shot or turnover after which the attackers had the ball no more. */
    private Optional<BallEvent> lastBall(List<BallEvent> balls) {
        Optional<BallEvent> last = balls.isEmpty() ? Optional.empty() : Optional.of(balls.get(balls.size() - 1));
        return last.filter(e -> e.kind() == BallEvent.Kind.SHOT || e.kind() == BallEvent.Kind.TURNOVER)
                .filter(e -> e.release() < play.coreTo())
                // One that was over before belongs to the possession before.
                .filter(e -> e.reception() >= play.coreFrom());
    }

    /** When the attackers had the ball no more. */
    private static int over(BallEvent end) {
        return end.kind() == BallEvent.Kind.SHOT ? end.release() : end.reception();
    }

    private List<Finding> beforeEnd(List<Finding> findings, Optional<BallEvent> end) {
        return end.map(e -> findings.stream()
                        .filter(f -> f.fromSeconds() <= play.time(e.release()))
                        .toList())
                .orElse(findings);
    }

    /** From when the two came together for the screen: waiting for it is part of it. */
    private int nearFrom(Screen screen) {
        double crowded = view.standards().of(Setting.SPACING_CROWDED_DISTANCE);
        int i = Math.min(screen.moment(), screen.pass());
        while (i > 0
                && screen.screener().seen(i)
                && screen.user().seen(i)
                && screen.screener().distanceTo(screen.user(), i) < crowded) {
            i--;
        }
        return Math.min(i, Math.min(screen.moment(), screen.pass()) - ACTION_BEFORE_TICKS);
    }

    private int nearTo(Screen screen) {
        return Math.max(screen.moment(), screen.pass()) + ACTION_AFTER_TICKS;
    }

    private List<Finding> sorted(List<Finding> findings) {
        double least = view.standards().of(Setting.FLAG_PROBABILITY);
        return findings.stream()
                .map(doubts::carriedInto)
                .filter(f -> !f.kind().isFlag() || f.probability() >= least)
                .sorted(Comparator.comparingDouble(Finding::fromSeconds).thenComparing(Finding::kind))
                .toList();
    }

    private Possession possession(Optional<BallEvent> end) {
        return new Possession(
                number,
                play.time(play.coreFrom()),
                play.time(end.map(BallEvent::reception).orElse(play.coreTo() - 1)),
                play.attackingTeam(),
                play.attackProbability(),
                play.end(),
                ids(play.attackers()),
                ids(play.defenders()),
                view.control().ballSeen(),
                end.map(e -> e.kind() == BallEvent.Kind.SHOT ? "shot" : "turnover")
                        .orElse(play.ending()));
    }

    private List<Integer> ids(List<PlayerPath> players) {
        return players.stream().filter(this::inCore).map(PlayerPath::trackId).toList();
    }

    private boolean inCore(PlayerPath player) {
        return player.first() < play.coreTo() && player.last() >= play.coreFrom();
    }

    private List<Trail> trails() {
        return Stream.concat(play.attackers().stream(), play.defenders().stream())
                .filter(this::inCore)
                .sorted(Comparator.comparingInt(PlayerPath::trackId))
                .map(this::trail)
                .toList();
    }

    private Trail trail(PlayerPath player) {
        List<TrailPoint> points = new ArrayList<>();
        for (int i = play.coreFrom(); i < play.coreTo(); i++) {
            if (player.seen(i)) {
                points.add(new TrailPoint(play.time(i), play.toCourt(player.estimate(i)), player.speed(i)));
            }
        }
        return new Trail(player.trackId(), player.team() == play.attackingTeam(), points);
    }

    private List<NotSeen> notSeen() {
        List<NotSeen> notSeen = new ArrayList<>();
        if (!view.control().ballSeen()) {
            notSeen.add(new NotSeen("ball", "the ball was not tracked; who has it is inferred from the players"));
        }
        if (play.defenders().isEmpty()) {
            notSeen.add(new NotSeen("screens", "no defender is on the floor"));
        }
        int most = atOnce(play.attackers());
        if (most > FULL_TEAM) {
            notSeen.add(new NotSeen(
                    "the five attackers", most + " players of one kit are on the floor at once; all of them count"));
        }
        if (play.others() > 0) {
            notSeen.add(new NotSeen("team of " + play.others() + " tracks", "their kit could not be told"));
        }
        return notSeen;
    }

    private int atOnce(List<PlayerPath> players) {
        int most = 0;
        for (int i = play.coreFrom(); i < play.coreTo(); i++) {
            int k = i;
            most = Math.max(most, (int) players.stream().filter(p -> p.seen(k)).count());
        }
        return most;
    }
}
