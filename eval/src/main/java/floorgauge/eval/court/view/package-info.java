/**
 * Rendered views of courts with a known camera, and how the court's calibration does on them: in goes a seed, out come
 * frames with their truth, an outcome a view, and the table in docs. Court frame, metres, pixels of the frames.
 */
package floorgauge.eval.court.view;
