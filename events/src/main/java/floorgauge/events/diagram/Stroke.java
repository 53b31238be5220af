package floorgauge.events.diagram;

import floorgauge.events.step.Step;
import floorgauge.events.step.StepKind;
import java.util.List;

/**
 * A step as it is drawn.
 *
 * @param step what it shows
 * @param line where the pen goes, millimetres; for a screen by a standing player and for a handoff a short line that the bar or the bars cross
 * @param end how it ends
 */
record Stroke(Step step, List<double[]> line, End end) {

    /** The mark at a stroke's end. */
    enum End {
        ARROW,
        BAR,
        HANDOFF_BARS,
        NOTHING
    }

    double[] tip() {
        return line.get(line.size() - 1);
    }

    boolean isPass() {
        return step.kind() == StepKind.PASS;
    }
}
