/**
 * How far each figure can be trusted: labels and results go in, scores with intervals, error rows and fitted standards come
 * out. Sub-packages: assignment (optimal pairing), tracking, pose, court, ball, events, statistics, score (labels against a
 * results folder) and card (the project's score card).
 *
 * <p>A ratio with nothing below its line is not a number (NaN) in the program, null in JSON and "not defined" on paper.
 */
package floorgauge.eval;
