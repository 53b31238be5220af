package floorgauge.events.diagram;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.step.Spots;
import floorgauge.events.step.Step;

/** Steps and marks as sentences. */
final class StepWords {

    private final PlayerLabels labels;
    private final Spots spots;

    StepWords(PlayerLabels labels, Spots spots) {
        this.labels = labels;
        this.spots = spots;
    }

    /** Such as {@code 5 screens for 2 at the right block}. */
    String of(Step step) {
        String who = labels.of(step.player());
        String other = step.other().isPresent() ? labels.of(step.other().getAsInt()) : "";
        return switch (step.kind()) {
            case DRIBBLE -> who + " dribbles" + course(step);
            case CUT -> who + " cuts" + course(step);
            case SHIFT -> who + " moves" + course(step);
            case SCREEN -> who + " screens for " + other + " at " + place(step.end());
            case PASS ->
                who + " passes to " + other
                        + step.target().map(t -> " at " + place(t)).orElse("");
            case HANDOFF -> who + " hands the ball to " + other + " at " + place(step.place());
            case TURNOVER -> who + " loses the ball to " + other;
            case SHOT -> who + " shoots from " + place(step.place());
        };
    }

    private String course(Step step) {
        String from = place(step.way().get(0));
        String to = place(step.end());
        return from.equals(to) ? " at " + to : " from " + from + " to " + to;
    }

    String place(FloorPoint point) {
        return "the " + spots.nearest(point);
    }
}
