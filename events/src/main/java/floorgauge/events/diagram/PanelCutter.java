package floorgauge.events.diagram;

import floorgauge.events.step.Step;
import floorgauge.events.step.StepKind;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Cuts the steps of a possession into drawings: as few as stay clear. The least sum of what each drawing costs, by dynamic programming:
 * a drawing of its own, its conflicts, steps beyond a handful, and a cut through things that happen together.
 */
final class PanelCutter {

    private static final double DRAWING = 1.6;
    private static final int MANY_STEPS = 6;
    private static final int MOST_STEPS = 9;
    private static final double STEP_TOO_MANY = 0.7;
    private static final double TOGETHER = 0.7;
    private static final double SCREEN_FROM_USER = 1.2;
    private static final double OVERLAP_SECONDS = 0.3;

    private final List<Step> steps;
    private final double start;
    private final LayoutMaker layouts;

    /** Makes the layout of a drawing. */
    @FunctionalInterface
    interface LayoutMaker {
        PanelLayout of(PanelPlan plan, List<Step> before, int firstNumber);
    }

    PanelCutter(List<Step> steps, double startSeconds, LayoutMaker layouts) {
        this.steps = steps;
        this.start = startSeconds;
        this.layouts = layouts;
    }

    List<PanelPlan> cut() {
        int n = steps.size();
        if (n == 0) {
            return List.of(new PanelPlan(List.of(), start, start));
        }
        double[] least = new double[n + 1];
        int[] from = new int[n + 1];
        for (int to = 1; to <= n; to++) {
            least[to] = Double.POSITIVE_INFINITY;
            for (int k = to - 1; k >= 0 && numbered(k, to) <= MOST_STEPS; k--) {
                double cost = least[k] + cost(k, to);
                if (cost < least[to] - 1e-9) {
                    least[to] = cost;
                    from[to] = k;
                }
            }
        }
        List<PanelPlan> plans = new ArrayList<>();
        for (int to = n; to > 0; to = from[to]) {
            plans.add(plan(from[to], to));
        }
        Collections.reverse(plans);
        return plans;
    }

    private int numbered(int from, int to) {
        return (int) steps.subList(from, to).stream()
                .filter(s -> s.kind().numbered())
                .count();
    }

    private PanelPlan plan(int from, int to) {
        List<Step> own = steps.subList(from, to);
        double begins = from == 0 ? start : own.get(0).fromSeconds();
        double ends = own.stream().mapToDouble(Step::toSeconds).max().orElse(begins);
        return new PanelPlan(own, begins, Math.max(begins, ends));
    }

    private double cost(int from, int to) {
        double conflicts = layouts.of(plan(from, to), steps.subList(0, from), 1).conflicts();
        double many = Math.max(0, numbered(from, to) - MANY_STEPS) * STEP_TOO_MANY;
        return DRAWING + conflicts + many + secondTurns(from, to) + (to < steps.size() ? seam(to) : 0);
    }

    /** A player who gets the ball, gives it away and gets it again makes a drawing hard to follow. */
    private double secondTurns(int from, int to) {
        Map<Integer, Integer> caught = new HashMap<>();
        for (Step step : steps.subList(from, to)) {
            if (step.kind() == StepKind.PASS || step.kind() == StepKind.HANDOFF) {
                caught.merge(step.other().orElseThrow(), 1, Integer::sum);
            }
        }
        return caught.values().stream().mapToDouble(c -> c - 1).sum();
    }

    /** What a seam before a step cuts through. */
    private double seam(int at) {
        double cost = 0;
        double next = steps.get(at).fromSeconds();
        for (int k = Math.max(0, at - MOST_STEPS); k < at; k++) {
            Step before = steps.get(k);
            cost += before.kind() != StepKind.SHIFT && before.toSeconds() > next + OVERLAP_SECONDS ? TOGETHER : 0;
            for (int j = at; j < Math.min(steps.size(), at + MOST_STEPS); j++) {
                cost += before.kind() == StepKind.SCREEN
                                && steps.get(j).kind().moves()
                                && steps.get(j).player() == before.other().orElse(-1)
                                && steps.get(j).fromSeconds() < before.toSeconds() + 1.5
                        ? SCREEN_FROM_USER
                        : 0;
            }
        }
        return cost;
    }
}
