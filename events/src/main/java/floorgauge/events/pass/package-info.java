/**
 * What happens to the ball between players: passes, handoffs, shots and turnovers; when a receiver was open, and whether the
 * pass came in time. All of it needs the ball's track.
 */
package floorgauge.events.pass;
