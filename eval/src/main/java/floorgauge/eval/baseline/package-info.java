/**
 * The committed baseline: what the measurement of events reaches on scenes of the library, kept as a file, so that a change
 * that makes it worse is seen before it is merged.
 */
package floorgauge.eval.baseline;
