package floorgauge.events.script;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The cheapest way to take a possession for a script.
 *
 * @param script which
 * @param steps the way through its alternatives, in the order in which it was run
 * @param holders who has which role, a track each
 * @param mirrored whether left and right are exchanged
 * @param acts what was taken for each step; empty for a step that was left out
 * @param cost sum of {@link StepCosts}
 */
record Alignment(
        Script script,
        List<ScriptStep> steps,
        Map<String, Integer> holders,
        boolean mirrored,
        List<Optional<Act>> acts,
        double cost) {}
