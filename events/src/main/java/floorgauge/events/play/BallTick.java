package floorgauge.events.play;

import floorgauge.events.motion.MotionSample;

/**
 * The ball at one tick.
 *
 * @param motion of its projection to the floor
 * @param heightMetres NaN where it is not known
 * @param heldBy track in whose hands it was seen, or 0
 */
record BallTick(MotionSample motion, double heightMetres, int heldBy) {}
