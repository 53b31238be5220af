package floorgauge.events.script;

import floorgauge.events.step.Step;
import floorgauge.events.step.StepKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A step that was seen, with the time that decides its place in the order: a screen counts from when its user leaves, since a
 * screener may stand there long before.
 *
 * @param step what was seen
 * @param orderSeconds for the order of acts
 */
record Act(Step step, double orderSeconds) {

    private static final double JUST_BEFORE = 0.01;
    private static final double BEGUN_SHARE = 0.3;
    private static final double MOST_BEGUN_SECONDS = 0.6;
    private static final double USED_WITHIN_SECONDS = 2.5;

    /** In order. */
    static List<Act> of(List<Step> steps) {
        List<Act> acts = new ArrayList<>();
        for (Step step : steps) {
            acts.add(new Act(step, order(step, steps)));
        }
        acts.sort(Comparator.comparingDouble(Act::orderSeconds)
                .thenComparing(a -> a.step().kind())
                .thenComparingInt(a -> a.step().player()));
        return acts;
    }

    private static double order(Step step, List<Step> steps) {
        if (step.kind() != StepKind.SCREEN) {
            return begun(step);
        }
        int user = step.other().orElse(-1);
        return steps.stream()
                .filter(s -> s.player() == user && s.kind().moves())
                .filter(s ->
                        s.toSeconds() >= step.toSeconds() && s.fromSeconds() <= step.toSeconds() + USED_WITHIN_SECONDS)
                .mapToDouble(s -> begun(s) - JUST_BEFORE)
                .min()
                .orElse(step.toSeconds());
    }

    /** A way counts from when it is well begun: two things that start at nearly the same time have no order. */
    private static double begun(Step step) {
        return step.kind().moves()
                ? step.fromSeconds()
                        + Math.min(MOST_BEGUN_SECONDS, BEGUN_SHARE * (step.toSeconds() - step.fromSeconds()))
                : step.fromSeconds();
    }
}
