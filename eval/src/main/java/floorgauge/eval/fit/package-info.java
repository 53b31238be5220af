/**
 * Thresholds and screen-quality weights fitted to labels. What is gained is always told on films that the fit has not seen
 * (cross-validation by film), with an interval; too few labels are refused with a sentence. Plain values in, standards out.
 */
package floorgauge.eval.fit;
