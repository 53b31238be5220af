package floorgauge.vision.tracking;

/**
 * A moment at which two persons' tracks may have been exchanged.
 *
 * @param one a sighting of the first track at its last instant before
 * @param other a sighting of the second track at its last instant before
 * @param fromSeconds when the two could first not be told apart
 * @param toSeconds when they could again
 * @param probability that they were exchanged
 */
record Exchange(Sighting one, Sighting other, double fromSeconds, double toSeconds, double probability) {}
