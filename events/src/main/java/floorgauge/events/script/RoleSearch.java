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

    private final ScriptWays script;
    private final List<String> roles;
    private final List<Act> acts;
    private final List<SmoothTrail> candidates;
    private final Spots spots;
    private final ToDoubleBiFunction<Act, Integer> nearest;
    private final boolean ballSeen;
    private double most = Double.POSITIVE_INFINITY;
    private Optional<Alignment> best = Optional.empty();

    /**
     * @param acts in order
     * @param attackers with a point each
     */
    RoleSearch(
            ScriptWays script,
            List<Act> acts,
            List<SmoothTrail> attackers,
            Spots spots,
            boolean ballSeen,
            ToDoubleBiFunction<Act, Integer> nearest) {
        this.ballSeen = ballSeen;
        this.nearest = nearest;
        this.script = script;
        this.roles = script.script().roles();
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
        if (candidates.size() < roles.size()) {
            return Optional.empty();
        }
        for (boolean mirrored : new boolean[] {false, true}) {
            StepCosts costs = new StepCosts(spots, mirrored, ballSeen, nearest);
            List<Assigned> assignments = new ArrayList<>();
            assign(0, new int[roles.size()], 0, startCosts(costs), assignments);
            assignments.sort(Comparator.comparingDouble(Assigned::cost));
            List<AssignedCosts> ways = script.ways().stream()
                    .map(w -> new AssignedCosts(w, acts, roles, candidates, costs))
                    .toList();
            for (Assigned assigned : assignments) {
                if (assigned.cost() >= most) {
                    break;
                }
                tryAll(assigned, ways, costs, mirrored);
            }
        }
        return best;
    }

    /** Roles with their holders, a candidate's index each, and what their starting places cost. */
    private record Assigned(int[] holders, double cost) {}

    /** Of each role's start by each candidate. */
    private double[][] startCosts(StepCosts costs) {
        double[][] start = new double[roles.size()][candidates.size()];
        for (int r = 0; r < roles.size(); r++) {
            Optional<String> place = script.script().players().get(roles.get(r));
            for (int c = 0; place.isPresent() && c < candidates.size(); c++) {
                start[r][c] = costs.start(candidates.get(c).place(0), place.get());
            }
        }
        return start;
    }

    private void assign(int role, int[] holders, double cost, double[][] start, List<Assigned> found) {
        if (role == holders.length) {
            found.add(new Assigned(holders.clone(), cost));
            return;
        }
        for (int c = 0; c < candidates.size(); c++) {
            boolean free = true;
            for (int r = 0; r < role; r++) {
                free &= holders[r] != c;
            }
            if (free) {
                holders[role] = c;
                assign(role + 1, holders, cost + start[role][c], start, found);
            }
        }
    }

    private void tryAll(Assigned assigned, List<AssignedCosts> ways, StepCosts costs, boolean mirrored) {
        for (AssignedCosts way : ways) {
            way.assign(assigned.holders());
            if (assigned.cost() + way.least() >= most) {
                continue;
            }
            SequenceAligner.Search search = new SequenceAligner.Search(way, most - assigned.cost());
            Optional<StepTree.Node> end = search.run();
            if (end.isPresent()) {
                most = assigned.cost() + search.cost();
                List<ScriptStep> steps = way.way().orderTo(end.get());
                Map<String, Integer> holders = holders(assigned);
                best = Optional.of(new Alignment(
                        script.script(),
                        steps,
                        holders,
                        mirrored,
                        SequenceAligner.matches(steps, acts, holders, costs),
                        most));
            }
        }
    }

    private Map<String, Integer> holders(Assigned assigned) {
        Map<String, Integer> holders = new HashMap<>();
        for (int r = 0; r < roles.size(); r++) {
            holders.put(roles.get(r), candidates.get(assigned.holders()[r]).trackId());
        }
        return Map.copyOf(holders);
    }
}
