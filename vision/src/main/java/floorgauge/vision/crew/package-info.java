/** Work shared out among threads that each hold what they need, with results in the order in which they were asked for. */
package floorgauge.vision.crew;
