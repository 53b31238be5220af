package floorgauge.events.script;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.ScriptReading;
import floorgauge.events.finding.Unit;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.statistics.Normal;
import floorgauge.events.step.SmoothTrail;
import floorgauge.events.step.Step;
import floorgauge.events.step.StepKind;
import floorgauge.events.words.Words;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Judges the steps of an alignment. The script says what to look at: whether the screener came up to the user's defender and stood, when
 * the cutter left against when the screener was set, how long after the cut the ball was passed.
 */
final class StepJudge {

    private static final double SURE = 0.93;
    private static final double SCREEN_BEFORE_SECONDS = 0.4;
    private static final double SCREEN_AFTER_SECONDS = 0.2;
    private static final double TICK = 0.04;

    /** So much beside a body, less than a hand is wide, is no screen that a coach would call blown. */
    private static final double NO_MATTER_METRES = 0.05;

    private static final double NOT_THERE_METRES = 3.0;
    private static final double TIME_ERROR_SECONDS = 0.06;
    private static final double SPEED_ERROR = 0.05;
    private static final double ON_HIS_WAY_SPEED = 1.25;

    /** A cut that the rules for cuts do not call late must wait this much longer before the script does. */
    private static final double LATE_ROOM_SECONDS = 0.5;

    /** Who runs to his place slows down into it; who slides into the defender's way keeps his pace. */
    private static final double SLOWS_DOWN_SPEED = 0.5;

    private static final double IN_PLACE_METRES = 0.2;

    private final PossessionFindings possession;
    private final Map<Integer, SmoothTrail> trails;
    private final Guards guards;
    private final Standards standards;
    private final Alignment alignment;
    private final IntPredicate misplaced;

    StepJudge(
            PossessionFindings possession,
            Map<Integer, SmoothTrail> trails,
            Guards guards,
            Standards standards,
            Alignment alignment,
            IntPredicate misplaced) {
        this.possession = possession;
        this.trails = trails;
        this.guards = guards;
        this.standards = standards;
        this.alignment = alignment;
        this.misplaced = misplaced;
    }

    Verdict judge(int index) {
        ScriptStep step = alignment.steps().get(index);
        Optional<Act> act = alignment.acts().get(index);
        if (step.optional()) {
            return act.isPresent() ? Verdict.done() : Verdict.leftOut();
        }
        boolean ballSeen = possession.possession().ballSeen();
        if (!ballSeen && act.isEmpty() && StepCosts.needsBall(step.verb())) {
            return Verdict.notSeen();
        }
        return switch (step.verb()) {
            case SCREEN -> screen(index);
            case CUT -> act.map(a -> cut(index, a)).orElseGet(() -> missing(index, 0.85, "does not cut"));
            case PASS -> act.map(a -> pass(index, a)).orElseGet(() -> noPass(index));
            case HANDOFF -> act.isPresent() ? Verdict.done() : missing(index, SURE, "hands the ball to nobody");
            // A dribble of a step or two is not told from standing, and the end of the film may hide the shot.
            case DRIBBLE, SHOOT -> act.isPresent() ? Verdict.done() : Verdict.leftOut();
        };
    }

    private int holder(String role) {
        return alignment.holders().get(role);
    }

    private Verdict missing(int index, double probability, String why) {
        return misplaced.test(index)
                ? new Verdict(ScriptReading.State.OUT_OF_ORDER, probability, "does it out of turn", Optional.empty())
                : Verdict.skipped(probability, why);
    }

    private Verdict noPass(int index) {
        ScriptStep step = alignment.steps().get(index);
        return missing(
                index,
                SURE,
                "does not pass to " + Words.player(holder(step.mate().orElseThrow())));
    }

    /** The first way of a role after a step. */
    private Optional<Step> wayAfter(int index, int trackId) {
        for (int k = index + 1; k < alignment.steps().size(); k++) {
            Optional<Act> act = alignment.acts().get(k);
            boolean own = holder(alignment.steps().get(k).who()) == trackId;
            if (own && act.isPresent() && !act.get().step().way().isEmpty()) {
                return act.map(Act::step);
            }
        }
        return Optional.empty();
    }

    private Verdict screen(int index) {
        ScriptStep step = alignment.steps().get(index);
        int user = holder(step.mate().orElseThrow());
        Optional<Step> way = wayAfter(index, user);
        if (way.isEmpty()) {
            return alignment.acts().get(index).isPresent()
                    ? Verdict.done()
                    : missing(index, 0.8, "sets no screen for " + Words.player(user));
        }
        Optional<SmoothTrail> guard = guards.of(user, way.get().fromSeconds());
        return guard.map(g -> screen(trails.get(holder(step.who())), trails.get(user), g, way.get()))
                .orElseGet(Verdict::done);
    }

    private Verdict screen(SmoothTrail screener, SmoothTrail user, SmoothTrail guard, Step way) {
        double from = way.fromSeconds() - SCREEN_BEFORE_SECONDS;
        double to = way.toSeconds() + SCREEN_AFTER_SECONDS;
        double passing = nearest(screener, user, from, to);
        if (distance(screener, user, passing) > NOT_THERE_METRES) {
            return Verdict.skipped(SURE, "is not there to screen for " + Words.player(user.trackId()));
        }
        double meeting = nearest(screener, guard, from, Math.min(to, passing + 0.8));
        if (leftEarly(screener, way)) {
            return Verdict.done();
        }
        // Where the screen was measured, the standards have said what there is to say of it.
        return isMeasured(screener, user, way)
                ? flagged(screener, user, way)
                : contact(screener, guard, meeting).orWorse(still(screener, meeting));
    }

    private boolean isMeasured(SmoothTrail screener, SmoothTrail user, Step way) {
        return possession.findings().stream()
                .anyMatch(f -> f.kind() == FindingKind.SCREEN
                        && f.holder(Role.SCREENER).orElse(-1) == screener.trackId()
                        && f.holder(Role.USER).orElse(-1) == user.trackId()
                        && f.fromSeconds() <= way.toSeconds()
                        && f.toSeconds() >= way.fromSeconds());
    }

    private static boolean onBall(Step way) {
        return way.kind() == StepKind.DRIBBLE;
    }

    private Verdict contact(SmoothTrail screener, SmoothTrail guard, double at) {
        double gap = distance(screener, guard, at) - 0.5;
        double error = Math.hypot(screener.errorAt(at), guard.errorAt(at));
        double limit = standards.of(Setting.SCREEN_CONTACT_GAP) + NO_MATTER_METRES;
        Figure figure = Figure.of("gap", gap, error, Unit.METRES);
        return Verdict.of(
                1 - Normal.atMost(limit, gap, error),
                "stands " + Words.of(figure) + " off " + Words.player(guard.trackId()),
                figure);
    }

    private Verdict still(SmoothTrail screener, double at) {
        double span = standards.of(Setting.SCREEN_SET_TIME);
        double sum = 0;
        int count = 0;
        for (double t = at - span; t <= at + 1e-9; t += TICK) {
            sum += screener.speedAt(t);
            count++;
        }
        Figure figure = Figure.of("screener speed", sum / count, SPEED_ERROR, Unit.METRES_PER_SECOND);
        return Verdict.of(
                1 - Normal.atMost(standards.of(Setting.SCREEN_SET_SPEED), figure.value(), SPEED_ERROR),
                "still moves at " + Words.of(figure) + " when he screens",
                figure);
    }

    /** What the standards say of the same screen. */
    private Verdict flagged(SmoothTrail screener, SmoothTrail user, Step way) {
        return possession.findings().stream()
                .filter(f -> f.kind() == FindingKind.MOVING_SCREEN
                        || f.kind() == FindingKind.MISSED_SCREEN
                        || f.kind() == FindingKind.WEAK_SCREEN)
                .filter(f -> f.holder(Role.SCREENER).orElse(-1) == screener.trackId()
                        && f.holder(Role.USER).orElse(-1) == user.trackId())
                .filter(f -> f.fromSeconds() <= way.toSeconds() && f.toSeconds() >= way.fromSeconds())
                .findFirst()
                .map(f -> new Verdict(
                        ScriptReading.State.BLOWN,
                        f.probability(),
                        switch (f.kind()) {
                            case MOVING_SCREEN -> "screens while he moves";
                            case WEAK_SCREEN -> "sets a weak screen";
                            default -> "misses the screen";
                        },
                        Optional.empty()))
                .orElseGet(Verdict::done);
    }

    /**
     * Whether the user, not the screener, is to blame. Where the screen was measured the standards have said so; else he is where he left
     * while the screener still ran to his place, slowing down into it, and did not slide into the defender's way. Who dribbles is not
     * blamed: the screener runs beside him.
     */
    private boolean leftEarly(SmoothTrail screener, Step way) {
        if (onBall(way)) {
            return false;
        }
        if (isFlagged(FindingKind.EARLY_CUT, Role.CUTTER, screener, way)) {
            return true;
        }
        if (isMeasured(screener, trails.get(way.player()), way)) {
            return false;
        }
        double leave = way.fromSeconds();
        double most = 0;
        for (double t = leave - 0.5; t <= leave; t += TICK) {
            most = Math.max(most, screener.speedAt(t));
        }
        double now = screener.speedAt(leave);
        return most > ON_HIS_WAY_SPEED
                && screener.speedAt(leave - 0.5) - now > SLOWS_DOWN_SPEED
                && now > 0.8 * standards.of(Setting.SCREEN_SET_SPEED);
    }

    private boolean isFlagged(FindingKind kind, Role role, SmoothTrail screener, Step way) {
        return possession.findings().stream()
                .anyMatch(f -> f.kind() == kind
                        && f.holder(role).orElse(-1) == way.player()
                        && f.holder(Role.SCREENER).orElse(-1) == screener.trackId()
                        && f.fromSeconds() <= way.toSeconds()
                        && f.toSeconds() >= way.fromSeconds());
    }

    private Verdict cut(int index, Act act) {
        Step way = act.step();
        double follows = previousEnd(index);
        Optional<SmoothTrail> screener = alignment
                .steps()
                .get(index)
                .off()
                .filter(o -> screensFor(index, o))
                .map(o -> trails.get(holder(o)));
        if (screener.isPresent() && leftEarly(screener.get(), way)) {
            Figure speed = Figure.of(
                    "screener speed", screener.get().speedAt(way.fromSeconds()), SPEED_ERROR, Unit.METRES_PER_SECOND);
            return new Verdict(
                    ScriptReading.State.BLOWN,
                    SURE,
                    "leaves while " + Words.player(screener.get().trackId()) + " still comes at " + Words.of(speed),
                    Optional.of(speed));
        }
        if (screener.isPresent() && isMeasured(screener.get(), trails.get(way.player()), way)) {
            return flaggedCut(way);
        }
        double set = screener.map(s -> setTime(s, way.fromSeconds())).orElse(follows);
        double since = Math.max(set, follows);
        Figure wait = Figure.of("start after set", way.fromSeconds() - since, TIME_ERROR_SECONDS, Unit.SECONDS);
        double limit = standards.of(Setting.CUT_LATE_TIME) + LATE_ROOM_SECONDS;
        return Verdict.of(
                        1 - Normal.atMost(limit, wait.value(), TIME_ERROR_SECONDS),
                        "leaves " + Words.of(wait) + " after "
                                + screener.map(s -> Words.player(s.trackId()) + " is set")
                                        .orElse("it is his turn"),
                        wait)
                .orWorse(flaggedCut(way));
    }

    private boolean screensFor(int index, String screener) {
        String user = alignment.steps().get(index).who();
        return alignment.steps().stream()
                .anyMatch(s -> s.verb() == ScriptVerb.SCREEN
                        && s.who().equals(screener)
                        && s.mate().orElseThrow().equals(user));
    }

    private Verdict flaggedCut(Step way) {
        return possession.findings().stream()
                .filter(f -> f.kind() == FindingKind.EARLY_CUT || f.kind() == FindingKind.LATE_CUT)
                .filter(f -> f.holder(Role.CUTTER).orElse(-1) == way.player())
                .filter(f -> f.fromSeconds() <= way.toSeconds() && f.toSeconds() >= way.fromSeconds())
                .findFirst()
                .map(f -> new Verdict(
                        ScriptReading.State.BLOWN,
                        f.probability(),
                        f.kind() == FindingKind.EARLY_CUT
                                ? "leaves before the screen is set"
                                : "leaves late after the screen is set",
                        Optional.empty()))
                .orElseGet(Verdict::done);
    }

    /** When a screener had come to the place where he stood as the user left him; small steps on the spot do not count. */
    private double setTime(SmoothTrail screener, double leave) {
        double t = leave;
        while (t > screener.first() && screener.at(t - TICK).distanceTo(screener.at(leave)) <= IN_PLACE_METRES) {
            t -= TICK;
        }
        return t;
    }

    /** When the step before was done: a pass caught, a screen set, a cut begun. */
    private double previousEnd(int index) {
        double latest = possession.possession().fromSeconds();
        for (int k = index - 1; k >= 0; k--) {
            Optional<Act> act = alignment.acts().get(k);
            if (act.isPresent()) {
                Step step = act.get().step();
                boolean way = step.kind() == StepKind.CUT || step.kind() == StepKind.SHIFT;
                latest = Math.max(latest, way ? step.fromSeconds() : step.toSeconds());
            }
        }
        return latest;
    }

    private Verdict pass(int index, Act act) {
        Step pass = act.step();
        if (pass.kind() == StepKind.TURNOVER) {
            return new Verdict(ScriptReading.State.BLOWN, SURE, "loses the ball", Optional.empty());
        }
        int receiver = holder(alignment.steps().get(index).mate().orElseThrow());
        Optional<Step> cut = wayBefore(index, receiver, pass.fromSeconds());
        double since = cut.map(Step::fromSeconds).orElseGet(() -> previousEnd(index));
        Figure delay = Figure.of("time to the pass", pass.fromSeconds() - since, TIME_ERROR_SECONDS, Unit.SECONDS);
        double limit = standards.of(Setting.SCRIPT_PASS_TIME);
        return Verdict.of(
                        1 - Normal.atMost(limit, delay.value(), TIME_ERROR_SECONDS),
                        "passes " + Words.of(delay) + " after "
                                + (cut.isPresent() ? Words.player(receiver) + " leaves" : "it is his turn"),
                        delay)
                .orWorse(flaggedPass(pass, receiver));
    }

    private Verdict flaggedPass(Step pass, int receiver) {
        return possession.findings().stream()
                .filter(f -> f.kind() == FindingKind.LATE_PASS)
                .filter(f -> f.holder(Role.PASSER).orElse(-1) == pass.player()
                        && f.holder(Role.RECEIVER).orElse(-1) == receiver)
                .filter(f -> f.fromSeconds() <= pass.toSeconds() && f.toSeconds() >= pass.fromSeconds())
                .findFirst()
                .map(f -> new Verdict(
                        ScriptReading.State.BLOWN,
                        f.probability(),
                        "passes after the window has closed",
                        Optional.empty()))
                .orElseGet(Verdict::done);
    }

    private Optional<Step> wayBefore(int index, int trackId, double before) {
        for (int k = index - 1; k >= 0; k--) {
            Optional<Act> act = alignment.acts().get(k);
            boolean own = holder(alignment.steps().get(k).who()) == trackId;
            if (own
                    && act.isPresent()
                    && !act.get().step().way().isEmpty()
                    && act.get().step().fromSeconds() < before) {
                return act.map(Act::step);
            }
        }
        return Optional.empty();
    }

    private static double nearest(SmoothTrail a, SmoothTrail b, double from, double to) {
        double best = from;
        for (double t = from; t <= to; t += TICK) {
            best = distance(a, b, t) < distance(a, b, best) ? t : best;
        }
        return best;
    }

    private static double distance(SmoothTrail a, SmoothTrail b, double seconds) {
        return a.at(seconds).distanceTo(b.at(seconds));
    }
}
