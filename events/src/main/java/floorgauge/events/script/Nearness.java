package floorgauge.events.script;

import floorgauge.events.step.SmoothTrail;
import floorgauge.events.step.Step;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.ToDoubleBiFunction;

/** How near who does an act comes to another player during it; each pair is measured once. */
final class Nearness implements ToDoubleBiFunction<Act, Integer> {

    private static final double STEP_SECONDS = 0.12;
    private static final double FAR = 100;

    private final Map<Integer, SmoothTrail> trails;
    private final Map<Act, Map<Integer, Double>> known = new IdentityHashMap<>();

    Nearness(Map<Integer, SmoothTrail> trails) {
        this.trails = trails;
    }

    @Override
    public double applyAsDouble(Act act, Integer other) {
        return known.computeIfAbsent(act, a -> new HashMap<>()).computeIfAbsent(other, o -> measure(act.step(), o));
    }

    private double measure(Step step, int other) {
        SmoothTrail a = trails.get(step.player());
        SmoothTrail b = trails.get(other);
        double least = FAR;
        for (double t = step.fromSeconds(); a != null && b != null && t <= step.toSeconds(); t += STEP_SECONDS) {
            least = Math.min(least, a.at(t).distanceTo(b.at(t)));
        }
        return least;
    }
}
