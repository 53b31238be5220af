/** Who has the ball, tick by tick: from the ball where it was seen, else inferred from the players. */
package floorgauge.events.control;
