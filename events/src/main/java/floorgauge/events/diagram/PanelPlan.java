package floorgauge.events.diagram;

import floorgauge.events.step.Step;
import java.util.List;

/**
 * What one drawing shows.
 *
 * @param steps in order of time
 * @param startSeconds when players without a step stand where they are drawn
 * @param endSeconds end of its last step
 */
record PanelPlan(List<Step> steps, double startSeconds, double endSeconds) {

    PanelPlan {
        steps = List.copyOf(steps);
    }
}
