/**
 * A possession as a coach tells it: who dribbles, passes, screens, cuts, hands off and shoots, in order, and the names of the places
 * where. Findings go in; diagrams and scripts read the steps that come out.
 */
package floorgauge.events.step;
