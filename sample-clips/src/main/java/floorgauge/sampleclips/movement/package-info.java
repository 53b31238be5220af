/**
 * Bodies that move as people can: steering towards goals under limits of speed and acceleration, round each other, without
 * walking through each other. Wishes go in tick by tick, recorded motion comes out. Court frame, metres, seconds.
 */
package floorgauge.sampleclips.movement;
