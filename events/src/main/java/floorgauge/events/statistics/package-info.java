/** Probabilities and estimates that several kinds of finding share. */
package floorgauge.events.statistics;
