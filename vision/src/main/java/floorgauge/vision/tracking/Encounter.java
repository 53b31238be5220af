package floorgauge.vision.tracking;

/**
 * A frame in which two tracklets could nearly as well have been given each other's sightings.
 *
 * @param one index of a tracklet in the order of their first frames
 * @param other index of another, above {@code one}
 * @param timeSeconds when
 * @param margin how much the exchange would have cost, in nats
 */
record Encounter(int one, int other, double timeSeconds, double margin) {}
