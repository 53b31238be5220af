package floorgauge.events.diagram;

import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.PossessionFindings;

/** Draws possessions and findings. The same input gives the same bytes. */
public final class Diagrams {

    private Diagrams() {}

    /**
     * A possession from its start to its shot: everyone's mark at the start of each drawing, ways, passes, screens, handoffs and the
     * shot as numbered steps. Without a ball track there are no passes, dribbles and shots in it.
     */
    public static Diagram ofPossession(RuleSet rules, PossessionFindings possession, PlayerLabels labels) {
        return new PossessionDiagram(rules, possession, labels).draw();
    }

    /**
     * A finding on the part of the floor where it took place: everyone where he was at the decisive moment, the ways of those who had a
     * role before and after, and what was measured, as dimensions.
     *
     * @param finding of the possession
     */
    public static Diagram ofFinding(
            RuleSet rules, PossessionFindings possession, Finding finding, PlayerLabels labels) {
        return new FindingDiagram(rules, possession, finding, labels).draw();
    }
}
