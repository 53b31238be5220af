package floorgauge.events.script;

import floorgauge.events.step.SmoothTrail;
import java.util.List;

/**
 * What it costs to take each act for each step of one way through a script, under one assignment of roles at a time. What does not
 * hang on the assignment is looked up once: {@link StepCosts} says what anything costs, this only remembers it.
 */
final class AssignedCosts {

    private static final int NOBODY = -1;

    private final StepTree way;
    private final int acts;
    private final int[] who;
    private final int[] mate;
    private final int[] off;
    private final int[] doer;
    private final int[] other;
    private final double[][] rightMate;
    private final double[][] wrongMate;
    private final double[][][] past;
    private final double[] leftOut;
    private final double[] extra;
    private final double[][] now;
    private double least;

    /**
     * @param roles in the script's order
     * @param candidates who may have them
     */
    AssignedCosts(StepTree way, List<Act> acts, List<String> roles, List<SmoothTrail> candidates, StepCosts costs) {
        int n = way.steps().size();
        this.way = way;
        this.acts = acts.size();
        this.who = new int[n];
        this.mate = new int[n];
        this.off = new int[n];
        this.doer = new int[this.acts];
        this.other = new int[this.acts];
        this.rightMate = new double[n][this.acts];
        this.wrongMate = new double[n][this.acts];
        this.past = new double[n][this.acts][];
        this.leftOut = new double[n];
        this.extra = new double[this.acts];
        this.now = new double[n][this.acts];
        for (int a = 0; a < this.acts; a++) {
            doer[a] = index(candidates, acts.get(a).step().player());
            other[a] = index(candidates, acts.get(a).step().other().orElse(NOBODY));
            extra[a] = StepCosts.extra(acts.get(a).step());
        }
        for (int s = 0; s < n; s++) {
            ScriptStep step = way.steps().get(s);
            who[s] = roles.indexOf(step.who());
            mate[s] = step.mate().map(roles::indexOf).orElse(NOBODY);
            off[s] = step.off().map(roles::indexOf).orElse(NOBODY);
            leftOut[s] = costs.leftOut(step);
            for (int a = 0; a < this.acts; a++) {
                Act act = acts.get(a);
                rightMate[s][a] = costs.done(step, act, true);
                wrongMate[s][a] = mate[s] == NOBODY ? rightMate[s][a] : costs.done(step, act, false);
                boolean ever = Math.min(rightMate[s][a], wrongMate[s][a]) < StepCosts.NEVER;
                past[s][a] = off[s] == NOBODY || !ever
                        ? new double[candidates.size()]
                        : candidates.stream()
                                .mapToDouble(c -> costs.past(act, c.trackId()))
                                .toArray();
            }
        }
    }

    private static int index(List<SmoothTrail> candidates, int trackId) {
        for (int i = 0; i < candidates.size(); i++) {
            if (candidates.get(i).trackId() == trackId) {
                return i;
            }
        }
        return NOBODY;
    }

    /** Costs are those of this assignment from now on: a candidate's index for each role. */
    void assign(int[] holders) {
        least = 0;
        for (int s = 0; s < now.length; s++) {
            int doing = holders[who[s]];
            int with = mate[s] == NOBODY ? NOBODY : holders[mate[s]];
            double cheapest = leftOut[s];
            for (int a = 0; a < acts; a++) {
                double cost = StepCosts.NEVER;
                if (doer[a] == doing) {
                    boolean right = mate[s] == NOBODY || with == other[a];
                    cost = right ? rightMate[s][a] : wrongMate[s][a];
                    cost += off[s] == NOBODY ? 0 : past[s][a][holders[off[s]]];
                }
                now[s][a] = cost;
                cheapest = Math.min(cheapest, cost);
            }
            least += cheapest;
        }
    }

    /** No order of the steps costs less under the present assignment. */
    double least() {
        return least;
    }

    StepTree way() {
        return way;
    }

    double match(int step, int act) {
        return now[step][act];
    }

    double leftOut(int step) {
        return leftOut[step];
    }

    double extra(int act) {
        return extra[act];
    }

    int acts() {
        return acts;
    }
}
