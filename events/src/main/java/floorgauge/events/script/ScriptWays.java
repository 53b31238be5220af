package floorgauge.events.script;

import java.util.List;

/**
 * A script with every way through it laid out once, for all possessions.
 *
 * @param script which
 * @param ways one tree for each way through its alternatives
 */
record ScriptWays(Script script, List<StepTree> ways) {

    static ScriptWays of(Script script) {
        return new ScriptWays(
                script, script.variants().stream().map(StepTree::new).toList());
    }
}
