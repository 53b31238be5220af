/**
 * Scores of findings against labelled events. Both sides become {@link floorgauge.eval.events.EventMark}s; a matching pairs
 * them one to one by time and by who had which role; scores are counts and error summaries over the pairs. What an annotator
 * could not tell counts neither for nor against.
 */
package floorgauge.eval.events;
