package floorgauge.events.script;

import floorgauge.events.step.SmoothTrail;
import floorgauge.events.step.Spots;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleBiFunction;

/**
 * Finds who has which role in a script: the assignment, the way through the script, its order and its side whose alignment costs
 * least. All assignments are tried, those that start at the wrong places last; one is given up as soon as it costs more than the best.
 */
final class RoleSearch {

    /** With fragments of tracks there are more candidates than players; the longest are tried. */
    private static final int MOST_CANDIDATES = 7;

    private final Script script;
    private final List<Act> acts;
    private final List<SmoothTrail> candidates;
    private final Spots spots;
    private final ToDoubleBiFunction<Act, Integer> nearest;
    private final boolean ballSeen;
    private Alignment best;

    /**
     * @param acts in order
     * @param attackers with a point each
     */
    RoleSearch(
            Script script,
            List<Act> acts,
            List<SmoothTrail> attackers,
            Spots spots,
            boolean ballSeen,
            ToDoubleBiFunction<Act, Integer> nearest) {
        this.ballSeen = ballSeen;
        this.nearest = nearest;
        this.script = script;
        this.acts = acts;
        this.spots = spots;
        this.candidates = attackers.stream()
                .sorted(Comparator.comparingInt(SmoothTrail::size).reversed().thenComparingInt(SmoothTrail::trackId))
                .limit(MOST_CANDIDATES)
                .sorted(Comparator.comparingInt(SmoothTrail::trackId))
                .toList();
    }

    /** Empty where there are fewer players than roles. */
    Optional<Alignment> search() {
        if (candidates.size() < script.players().size()) {
            return Optional.empty();
        }
        for (boolean mirrored : new boolean[] {false, true}) {
            StepCosts costs = new StepCosts(spots, mirrored, ballSeen, nearest);
            List<Assigned> assignments = new ArrayList<>();
            assign(script.roles(), 0, new HashMap<>(), 0, costs, assignments);
            assignments.sort(Comparator.comparingDouble(Assigned::cost));
            for (Assigned assigned : assignments) {
                tryAll(assigned, costs, mirrored);
            }
        }
        return Optional.ofNullable(best);
    }

    /** Roles with their holders, and what their starting places cost. */
    private record Assigned(Map<String, Integer> holders, double cost) {}

    private void assign(
            List<String> roles,
            int next,
            Map<String, Integer> holders,
            double cost,
            StepCosts costs,
            List<Assigned> found) {
        if (next == roles.size()) {
            found.add(new Assigned(Map.copyOf(holders), cost));
            return;
        }
        String role = roles.get(next);
        for (SmoothTrail candidate : candidates) {
            if (!holders.containsValue(candidate.trackId())) {
                double start = script.players()
                        .get(role)
                        .map(p -> costs.start(candidate.place(0), p))
                        .orElse(0.0);
                holders.put(role, candidate.trackId());
                assign(roles, next + 1, holders, cost + start, costs, found);
                holders.remove(role);
            }
        }
    }

    private void tryAll(Assigned assigned, StepCosts costs, boolean mirrored) {
        for (List<ScriptStep> variant : script.variants()) {
            for (List<ScriptStep> steps : SequenceAligner.orders(variant)) {
                double most = best == null ? Double.POSITIVE_INFINITY : best.cost();
                if (assigned.cost() >= most) {
                    return;
                }
                double cost = assigned.cost()
                        + SequenceAligner.cost(steps, acts, assigned.holders(), costs, most - assigned.cost());
                if (cost < most - 1e-9) {
                    best = new Alignment(
                            script,
                            steps,
                            assigned.holders(),
                            mirrored,
                            SequenceAligner.matches(steps, acts, assigned.holders(), costs),
                            cost);
                }
            }
        }
    }
}
