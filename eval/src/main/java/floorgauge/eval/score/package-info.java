/**
 * Labels against a results folder: label files and the folder that {@code floorgauge measure} wrote go in; one table of
 * measures with intervals, the error rows behind it, curves and breakdowns come out, as text, JSON, CSV and a page.
 *
 * <p>Every measure is a ratio of sums over films, so that films pool by adding, intervals resample whole films, and two runs
 * are compared film by film.
 */
package floorgauge.eval.score;
