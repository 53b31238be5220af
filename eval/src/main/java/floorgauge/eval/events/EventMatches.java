package floorgauge.eval.events;

import java.util.List;

/**
 * What became of labelled events and findings.
 *
 * @param pairs a label and the finding that stands for it, in order of the label's moment
 * @param missed labels without a finding
 * @param falseAlarms findings without a label
 */
public record EventMatches(List<Pair> pairs, List<EventMark> missed, List<EventMark> falseAlarms) {

    /**
     * @param label what was labelled
     * @param result what was found
     * @param rolesCompared roles that both name and that could be compared
     * @param rolesSame of them those held by the same people
     */
    public record Pair(EventMark label, EventMark result, int rolesCompared, int rolesSame) {

        /** Result less label. */
        public double momentErrorSeconds() {
            return result.momentSeconds() - label.momentSeconds();
        }
    }

    public EventMatches {
        pairs = List.copyOf(pairs);
        missed = List.copyOf(missed);
        falseAlarms = List.copyOf(falseAlarms);
    }
}
