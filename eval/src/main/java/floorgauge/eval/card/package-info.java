/**
 * The project's score card: what every stage reaches on films and scenes that nothing was tuned on, in one page of the
 * documentation. Worse figures stay in; a stage that was not measured says so.
 */
package floorgauge.eval.card;
