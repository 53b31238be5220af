/**
 * Scores of tracks against labelled tracks. Two {@link floorgauge.eval.tracking.TrackSequence}s and a
 * {@link floorgauge.eval.tracking.Similarity} make a {@link floorgauge.eval.tracking.SimilarityTable}; a matching turns the
 * table into an {@link floorgauge.eval.tracking.EventLog} of matches, switches, misses and false alarms; every score is a
 * sum over such a log.
 *
 * <p>What may be given: frames in order, each id at most once in a frame, similarities in 0 to 1. Frames that the truth does
 * not list were not labelled and are not scored; a listed frame without anybody says that nobody was there. Ids belong to a
 * film; an id that stops and comes again is one identity.
 *
 * <p>Memory grows linearly with the number of frames. Nothing here is thread-safe while it is built; everything is immutable
 * once built.
 */
package floorgauge.eval.tracking;
