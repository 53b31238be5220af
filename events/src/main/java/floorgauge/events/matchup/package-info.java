/** Who guards whom through a play, and when two defenders exchange their men. */
package floorgauge.events.matchup;
