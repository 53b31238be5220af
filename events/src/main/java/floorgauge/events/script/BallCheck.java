package floorgauge.events.script;

import java.util.List;

/** Follows the ball through a way of a script and refuses what cannot be done: a pass by who has no ball, a cut by who has it, a step after the shot. */
final class BallCheck {

    private final String source;
    private String holder;
    private int since;
    private boolean shot;

    BallCheck(String source, String ball) {
        this.source = source;
        this.holder = ball;
    }

    void check(List<ScriptStep> steps) {
        for (ScriptStep step : steps) {
            boolean has = step.who().equals(holder);
            boolean ball = step.verb() != ScriptVerb.SCREEN && step.verb() != ScriptVerb.CUT;
            if (shot) {
                throw at(step, "nothing comes after the shot of line " + since);
            }
            if (ball && !has) {
                throw at(step, step.who() + " does not have the ball; " + where());
            }
            if (step.verb() == ScriptVerb.CUT && has) {
                throw at(
                        step,
                        step.who() + " has the ball, and dribbles rather than cuts; write '" + step.who()
                                + " dribbles to ...'");
            }
            if (step.verb() == ScriptVerb.SCREEN && has) {
                throw at(step, step.who() + " has the ball and cannot screen; pass or hand off first");
            }
            if (step.optional()) {
                continue;
            }
            if (step.verb() == ScriptVerb.PASS || step.verb() == ScriptVerb.HANDOFF) {
                holder = step.mate().orElseThrow();
                since = step.line();
            }
            shot = step.verb() == ScriptVerb.SHOOT;
            since = shot ? step.line() : since;
        }
    }

    private String where() {
        return since == 0 ? holder + " starts with it" : holder + " has it since line " + since;
    }

    private ScriptException at(ScriptStep step, String problem) {
        return new ScriptException(source, step.line(), problem);
    }
}
