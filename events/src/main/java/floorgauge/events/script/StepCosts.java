package floorgauge.events.script;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.step.Spots;
import floorgauge.events.step.Step;
import floorgauge.events.step.StepKind;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.ToDoubleBiFunction;

/**
 * What it costs to take one thing for another: a step of the script for a step that was seen, a step of the script for one that was
 * left out, a step that was seen for one too many. A cost of 1 is that of leaving out a screen or a pass.
 */
final class StepCosts {

    static final double NEVER = 1e6;

    private static final double WRONG_MATE = 0.7;
    private static final double WRONG_KIND = 0.1;
    private static final double BALL_NOT_SEEN = 0.2;
    private static final double LOST = 0.25;
    private static final double PAST_NOBODY = 0.3;
    private static final double HANDOFF_AS_PASS = 0.35;
    private static final double CAME_BUT_NO_SCREEN = 0.3;
    private static final double PAST_METRES = 2.2;
    private static final double CAME_NEAR_METRES = 3.0;
    private static final double PLACE_FREE_METRES = 1.8;
    private static final double PLACE_FULL_METRES = 5.0;
    private static final double PLACE_MOST = 0.5;
    private static final double START_FREE_METRES = 1.5;
    private static final double START_FULL_METRES = 6.0;
    private static final double START_MOST = 0.4;
    private static final double LEFT_OUT_AT_WILL = 0.04;

    private final Spots spots;
    private final boolean mirrored;
    private final boolean ballSeen;
    private final ToDoubleBiFunction<Act, Integer> nearest;

    /**
     * @param nearest least distance of who does an act to another player during it, metres
     */
    StepCosts(Spots spots, boolean mirrored, boolean ballSeen, ToDoubleBiFunction<Act, Integer> nearest) {
        this.ballSeen = ballSeen;
        this.spots = spots;
        this.nearest = nearest;
        this.mirrored = mirrored;
    }

    /** Where a place of the script lies, on the side to which the action was run. */
    FloorPoint place(String name) {
        return spots.named(mirrored ? mirror(name) : name).orElseThrow();
    }

    private static String mirror(String name) {
        if (name.startsWith("left ")) {
            return "right " + name.substring("left ".length());
        }
        return name.startsWith("right ") ? "left " + name.substring("right ".length()) : name;
    }

    /** Of starting at a distance from where the script has a role start. */
    double start(FloorPoint seen, String place) {
        return ramp(seen.distanceTo(place(place)), START_FREE_METRES, START_FULL_METRES) * START_MOST;
    }

    private static double ramp(double value, double free, double full) {
        return Math.max(0, Math.min(1, (value - free) / (full - free)));
    }

    /** Of a step left out. */
    double leftOut(ScriptStep step) {
        if (step.optional() || (!ballSeen && needsBall(step.verb()))) {
            return LEFT_OUT_AT_WILL;
        }
        return switch (step.verb()) {
            case SCREEN, PASS, HANDOFF -> 1;
            case CUT -> 0.8;
            case DRIBBLE -> 0.5;
            case SHOOT -> 0.1;
        };
    }

    /** Whether nothing can be said of such a step where the ball was not tracked. */
    static boolean needsBall(ScriptVerb verb) {
        return verb.movesBall() || verb == ScriptVerb.DRIBBLE;
    }

    /** Of a step that the script does not have. */
    static double extra(Step step) {
        return switch (step.kind()) {
            case PASS, HANDOFF, TURNOVER -> 0.5;
            case SCREEN -> 0.2;
            case CUT -> 0.12;
            case DRIBBLE -> 0.08;
            case SHOT -> 0.05;
            case SHIFT -> 0;
        };
    }

    /** Of taking what was seen for a step of the script, given who has which role; {@link #NEVER} where it cannot be. */
    double match(ScriptStep step, Act act, Map<String, Integer> holders) {
        Step seen = act.step();
        if (holders.get(step.who()) != seen.player()) {
            return NEVER;
        }
        boolean rightMate = step.mate()
                .map(m -> OptionalInt.of(holders.get(m)).equals(seen.other()))
                .orElse(true);
        double past = step.off().map(o -> past(act, holders.get(o))).orElse(0.0);
        return done(step, act, rightMate) + past;
    }

    /**
     * Of taking what the right player was seen to do for a step of the script; {@link #NEVER} or more where it cannot be.
     *
     * @param rightMate whether it was done with or for the team-mate whom the step names
     */
    double done(ScriptStep step, Act act, boolean rightMate) {
        double verb = verb(step, act.step(), rightMate);
        return verb >= NEVER ? NEVER : verb + place(step, act.step());
    }

    /** Of going by somebody farther away than one goes by a screen. */
    double past(Act act, int trackId) {
        return nearest.applyAsDouble(act, trackId) > PAST_METRES ? PAST_NOBODY : 0;
    }

    private double verb(ScriptStep step, Step seen, boolean rightMate) {
        double wrong = rightMate ? 0 : WRONG_MATE;
        return switch (step.verb()) {
            case SCREEN ->
                seen.kind() == StepKind.SCREEN ? wrong + kind(step, seen) : cameNear(seen) ? CAME_BUT_NO_SCREEN : NEVER;
            case PASS ->
                seen.kind() == StepKind.TURNOVER
                        ? LOST
                        : seen.kind() == StepKind.PASS
                                ? wrong
                                : seen.kind() == StepKind.HANDOFF ? wrong + HANDOFF_AS_PASS : NEVER;
            case HANDOFF ->
                seen.kind() == StepKind.HANDOFF
                        ? wrong
                        : seen.kind() == StepKind.PASS ? wrong + HANDOFF_AS_PASS : NEVER;
            case CUT ->
                seen.kind() == StepKind.CUT || seen.kind() == StepKind.SHIFT
                        ? 0
                        : seen.kind() == StepKind.DRIBBLE || isWay(seen) ? BALL_NOT_SEEN : NEVER;
            case DRIBBLE ->
                seen.kind() == StepKind.DRIBBLE
                        ? 0
                        : seen.kind() == StepKind.CUT || seen.kind() == StepKind.SHIFT || isWay(seen)
                                ? BALL_NOT_SEEN
                                : NEVER;
            case SHOOT -> seen.kind() == StepKind.SHOT ? 0 : NEVER;
        };
    }

    /** A way that ended in what was taken for a screen. */
    private static boolean isWay(Step seen) {
        return seen.kind() == StepKind.SCREEN && !seen.way().isEmpty();
    }

    private static double kind(ScriptStep step, Step seen) {
        return step.kind().isEmpty() || step.kind().get().equals(seen.label()) ? 0 : WRONG_KIND;
    }

    /** A way without the ball that may have been the way to a screen. */
    private static boolean cameNear(Step seen) {
        return seen.kind() == StepKind.CUT || seen.kind() == StepKind.SHIFT;
    }

    private double place(ScriptStep step, Step seen) {
        if (step.place().isEmpty()) {
            return 0;
        }
        double away = seen.end().distanceTo(place(step.place().get()));
        double far = ramp(away, PLACE_FREE_METRES, PLACE_FULL_METRES) * PLACE_MOST;
        boolean screenByWay = step.verb() == ScriptVerb.SCREEN && seen.kind() != StepKind.SCREEN;
        return screenByWay && away > CAME_NEAR_METRES ? NEVER : far;
    }
}
