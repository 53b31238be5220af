/** Cuts: off-ball runs, what they are called, and whether they started in time with their screen. */
package floorgauge.events.cut;
