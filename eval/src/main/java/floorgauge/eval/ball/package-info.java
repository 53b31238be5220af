/**
 * Scores of a found ball against a labelled one: precision and recall within a distance in the picture and a time, and the
 * error in space where the truth knows it.
 */
package floorgauge.eval.ball;
